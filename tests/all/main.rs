//! Every integration test, in one binary.
#![allow(clippy::unwrap_used)]

mod cases;
mod command;
mod compare;
mod floors;
mod mistakes;
mod support;
mod vectors;
