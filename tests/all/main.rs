//! Every integration test, in one binary.
#![allow(clippy::unwrap_used)]

mod bare;
mod bounds;
mod cases;
mod catalogue;
mod command;
mod compare;
mod csv;
mod engineer;
mod five_checks;
mod floors;
mod form;
mod gap;
mod manual;
mod mistakes;
mod monotony;
mod new;
mod readme;
mod rules;
mod schema;
mod sheet;
mod support;
mod vectors;
mod verify;
