//! Every integration test, in one binary.
#![allow(clippy::unwrap_used)]

mod bare;
mod bounds;
mod cases;
mod command;
mod compare;
mod five_checks;
mod floors;
mod gap;
mod mistakes;
mod monotony;
mod readme;
mod form;
mod mistakes;
mod new;
mod support;
mod vectors;
