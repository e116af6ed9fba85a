//! Footings: what standards of installation ask of the hole a post is set in.

pub mod astm_f567;
