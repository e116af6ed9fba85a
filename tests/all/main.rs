//! Every integration test, in one binary.
#![allow(clippy::unwrap_used)]

mod bare;
mod bounds;
mod cases;
mod command;
mod compare;
mod engineer;
mod five_checks;
mod floors;
mod form;
mod gap;
mod gates;
mod hill;
mod iced;
mod mistakes;
mod monotony;
mod new;
mod open_cloth;
mod raised;
mod readme;
mod sheet;
mod support;
mod vectors;
