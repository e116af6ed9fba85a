//! Every integration test, in one binary.

mod support;
mod vectors;
