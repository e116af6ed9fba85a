//! Chain-link wire and the wire ties that hold chain link itself.
//!
//! Cloth that is tied to chain link and not to the rail behind it hangs on the chain link's own ties. The wire of such a
//! tie says what it cannot pass; hooked, it opens well before.

use super::ties::TiePull;
use super::{Checked, FasteningError, Part, Ratio, above_nought, not_below_nought};
use crate::rule;
use crate::source::{Catalogue, CatalogueError, STATICS, Stated};
use crate::units::{Force, Length, Powers, Pressure, inches, ksi, pounds};
use crate::workings::{Ledger, Listed};
use std::f64::consts::PI;
use std::sync::LazyLock;

rule! {
    /// Breaking load of a wire pulled straight.
    ///
    /// # Checked by
    /// `reference-cases/fastening/rr-f-191-1f-undated-9-gauge.toml` and those of 6 and 11 gauge
    WireBreaking, "fastening/wire-breaking", STATICS.at("strength times area");
    /// tensile strength
    strength: Pressure as Stress = "f_u";
    /// diameter of the wire
    diameter: Length as Small = "d";
    breaking "R": Force = strength * (PI / 4.0 * diameter.squared())
}

/// The rules of this module by name.
pub const RULES: &[Listed] = &[Listed::of::<WireBreaking>()];

/// A wire of chain link.
#[derive(Debug, Clone, PartialEq)]
pub struct Wire {
    /// Its name here.
    pub name: String,
    /// Diameter.
    pub diameter: Length,
    /// Least breaking load of one wire.
    pub breaking: Force,
    /// How well that is known.
    pub known: String,
}

/// A wire that ties are bent from.
#[derive(Debug, Clone, PartialEq)]
pub struct TieWire {
    /// Its name here.
    pub name: String,
    /// Diameter.
    pub diameter: Length,
    /// Tensile strength, at least.
    pub strength_low: Pressure,
    /// Tensile strength, at most.
    pub strength_high: Pressure,
    /// How well that is known.
    pub known: String,
}

static WIRES: LazyLock<(Vec<Wire>, Vec<TieWire>)> = LazyLock::new(|| {
    let read = || -> Result<(Vec<Wire>, Vec<TieWire>), CatalogueError> {
        let mesh = Catalogue::read(include_str!("catalogue/chain-link-wire-rr-f-191-1f-undated.csv"))?;
        let wires = mesh.rows.iter().map(|row| {
            Ok(Wire {
                name: row.text("name")?.to_owned(),
                diameter: inches(row.number("diameter_in")?),
                breaking: pounds(row.number("breaking_lbf")?),
                known: mesh.known.clone(),
            })
        });
        let ties = Catalogue::read(include_str!("catalogue/tie-wire-astm-f626-2014.csv"))?;
        let tie_wires = ties.rows.iter().map(|row| {
            Ok(TieWire {
                name: row.text("name")?.to_owned(),
                diameter: inches(row.number("diameter_in")?),
                strength_low: ksi(row.number("strength_low_ksi")?),
                strength_high: ksi(row.number("strength_high_ksi")?),
                known: ties.known.clone(),
            })
        });
        Ok((wires.collect::<Result<_, CatalogueError>>()?, tie_wires.collect::<Result<_, CatalogueError>>()?))
    };
    read().expect("the catalogue in the program is read by a test")
});

/// The wires of chain link.
#[must_use]
pub fn wires() -> &'static [Wire] {
    &WIRES.0
}

/// The wires that ties are bent from.
#[must_use]
pub fn tie_wires() -> &'static [TieWire] {
    &WIRES.1
}

/// Holds the pull on a wire tie against the strength of its wire pulled straight, which the tie cannot pass: a pull
/// beyond it is over, a pull below it is not checked.
///
/// # Errors
/// If the pull is below 0, or the wire has no diameter or strength.
pub fn check_tie(demand: Force, wire: &TieWire, ledger: &mut impl Ledger) -> Result<Checked, FasteningError> {
    let demand = not_below_nought("the pull on a wire tie", demand)?;
    let diameter = above_nought("the diameter of the wire", wire.diameter)?;
    let strength = above_nought("the strength of the wire", wire.strength_high)?;
    let at_most = WireBreaking { strength, diameter }.work(ledger);
    let ratio = Ratio { demand, capacity: at_most }.work(ledger);
    Ok(Checked::AtLeast { part: Part::WireTie, demand, at_most, ratio })
}

/// How far apart the chain link's own ties stand along a rail, where nobody measured it.
pub const OWN_TIES: Stated<Length> = Stated {
    value: inches(24.0),
    because: "the most that a city's code, after ASTM F567, lets along a rail",
};

/// The chain link's own ties, where cloth hangs on the mesh alone: a row of them takes what a rail or tension bar
/// beside it would have taken.
///
/// `spacing` is that of the wire ties, `strip` the cloth they hold by half the distance to the next of their rows.
///
/// # Errors
/// If the pressure or the strip is below 0, the spacing not above it, or the wire has no diameter or strength.
pub fn own_ties(
    pressure: Pressure,
    spacing: Length,
    strip: Length,
    wire: &TieWire,
    ledger: &mut impl Ledger,
) -> Result<Checked, FasteningError> {
    let pressure = not_below_nought("the pressure that pulls the cloth off", pressure)?;
    let spacing = above_nought("the spacing of the wire ties", spacing)?;
    let strip = not_below_nought("the strip of cloth", strip)?;
    let demand = TiePull { pressure, spacing, strip }.work(ledger);
    check_tie(demand, wire, ledger)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Pure, psf};
    use crate::workings::Blank;

    #[test]
    fn each_steel_wire_breaks_at_what_its_area_makes_of_75_ksi() {
        let mut steel = 0;
        for wire in wires().iter().filter(|wire| wire.name.starts_with("steel")) {
            let made = WireBreaking { strength: ksi(75.0), diameter: wire.diameter }.work(&mut Blank);
            assert!(((made / wire.breaking).pure() - 1.0).abs() < 0.003, "{wire:?}");
            steel += 1;
        }
        assert_eq!((steel, wires().len()), (3, 5));
    }

    #[test]
    fn a_wire_tie_is_over_beyond_its_wire_and_not_checked_below_it() {
        let tie = &tie_wires()[0];
        let straight = WireBreaking { strength: tie.strength_low, diameter: tie.diameter }.work(&mut Blank);
        assert!(((straight / pounds(485.0)).pure() - 1.0).abs() < 1e-3);
        // 10 psf on 24 in of rail and half of 10 ft of cloth.
        let found = own_ties(psf(10.0), inches(24.0), inches(60.0), tie, &mut Blank).unwrap();
        let Checked::AtLeast { demand, .. } = found else { panic!("{found:?}") };
        assert!(((demand / pounds(100.0)).pure() - 1.0).abs() < 1e-12);
        assert_eq!(found.is_over(), None);
        assert!(found.ask().unwrap().contains("opens as it is hooked"));
        let over = check_tie(pounds(600.0), tie, &mut Blank).unwrap();
        assert_eq!(over.is_over(), Some(true));
        assert!(check_tie(pounds(-1.0), tie, &mut Blank).is_err());
        assert!(own_ties(psf(10.0), inches(0.0), inches(60.0), tie, &mut Blank).is_err());
    }
}
