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
mod fastening;
mod five_checks;
mod floors;
mod form;
mod gap;
mod mistakes;
mod monotony;
mod new;
mod order;
mod posts;
mod readme;
mod sheet;
mod support;
mod vectors;
