//! Every integration test, in one binary.
#![allow(clippy::unwrap_used)]

mod floors;
mod support;
mod vectors;
