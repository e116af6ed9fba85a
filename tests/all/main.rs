//! Every integration test, in one binary.
#![allow(clippy::unwrap_used)]

mod bare;
mod bounds;
mod cases;
mod command;
mod compare;
mod either_system;
mod engineer;
mod five_checks;
mod floors;
mod form;
mod gap;
mod mistakes;
mod monotony;
mod new;
mod readme;
mod sheet;
mod support;
mod vectors;
