//! Every integration test, in one binary.
#![allow(clippy::unwrap_used)]

mod bare;
mod bounds;
mod cases;
mod catalogue;
mod command;
mod compare;
mod csv;
mod either_system;
mod engineer;
mod fastening;
mod five_checks;
mod floors;
mod form;
mod gap;
mod gates;
mod hill;
mod iced;
mod manual;
mod mistakes;
mod monotony;
mod new;
mod open_cloth;
mod order;
mod posts;
mod properties;
mod raised;
mod readme;
mod rules;
mod schema;
mod sheet;
mod support;
mod sway;
mod vectors;
mod verify;
mod winds;
