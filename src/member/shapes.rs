//! Catalogues beside that of fence pipe: pipe of buildings, which can be named but is no candidate for an unknown
//! wall, and the shapes of a highway table, which prints weights and yields but no walls.

use super::pipe::Pipe;
use super::{RoundTube, TubeSizes};
use crate::source::{Catalogue, CatalogueError, Row};
use crate::units::{Area, Dimension, Length, Pressure, Quantity, SecondMoment, SectionModulus, Unit, Value};
use crate::workings::Blank;
use std::sync::LazyLock;

/// One pipe of the shapes database, with the properties it lists.
#[derive(Debug, Clone, PartialEq)]
pub struct Shape {
    /// Name, sizes, weight, yield and publication.
    pub pipe: Pipe,
    /// Design wall as listed; 0.93 of the nominal wall, rounded by the database, up to 0.6 % off it.
    pub design_wall: Length,
    /// Area as listed.
    pub area: Area,
    /// Second moment of area as listed.
    pub second_moment: SecondMoment,
    /// Elastic section modulus as listed.
    pub elastic_modulus: SectionModulus,
    /// Plastic section modulus as listed.
    pub plastic_modulus: SectionModulus,
    /// Radius of gyration as listed.
    pub radius_of_gyration: Length,
    /// Torsional constant as listed.
    pub torsional_constant: SecondMoment,
}

/// A listed property that its own row's dimensions do not make.
#[derive(Debug, Clone, PartialEq)]
pub struct Conflict {
    /// Which property.
    pub property: &'static str,
    /// As listed.
    pub listed: Value,
    /// What diameter and design wall make.
    pub worked: Value,
}

impl Shape {
    /// The listed properties that diameter and design wall do not make, each held to half a unit of its third digit.
    #[must_use]
    pub fn conflicts(&self) -> Vec<Conflict> {
        let tube = RoundTube::try_new(TubeSizes { diameter: self.pipe.diameter, wall: self.design_wall })
            .expect("every row of the catalogue is a tube, which a test reads");
        let ledger = &mut Blank;
        [
            ("area", Value::of(self.area), Value::of(tube.area(ledger)), INCH.powi(2)),
            (
                "second moment of area",
                Value::of(self.second_moment),
                Value::of(tube.second_moment(ledger)),
                INCH.powi(4),
            ),
            (
                "elastic modulus",
                Value::of(self.elastic_modulus),
                Value::of(tube.elastic_modulus(ledger)),
                INCH.powi(3),
            ),
            (
                "plastic modulus",
                Value::of(self.plastic_modulus),
                Value::of(tube.plastic_modulus(ledger)),
                INCH.powi(3),
            ),
            (
                "radius of gyration",
                Value::of(self.radius_of_gyration),
                Value::of(tube.radius_of_gyration(ledger)),
                INCH,
            ),
            (
                "torsional constant",
                Value::of(self.torsional_constant),
                Value::of(tube.second_moment(ledger) * 2.0),
                INCH.powi(4),
            ),
        ]
        .into_iter()
        .filter(|(_, listed, worked, inch)| {
            ((listed.si - worked.si) / inch).abs() > half_of_third_digit(listed.si / inch)
        })
        .map(|(property, listed, worked, _)| Conflict { property, listed, worked })
        .collect()
    }
}

const INCH: f64 = 0.0254;

/// Half a unit of the third digit; the database prints three decimals at most below 0.1.
fn half_of_third_digit(value: f64) -> f64 {
    let place = 2.0 - value.abs().log10().floor();
    // A hair is left for the digits of the machine.
    0.500_001 * 10_f64.powf(-place.min(3.0))
}

fn si(row: &Row, column: &str, dimension: Dimension) -> Result<f64, CatalogueError> {
    let (number, unit) = row.quantity(column)?;
    Ok(Unit::in_si(number, unit, dimension).unwrap_or(f64::NAN))
}

static SHAPES: LazyLock<Vec<Shape>> = LazyLock::new(|| {
    let read = || -> Result<Vec<Shape>, CatalogueError> {
        let catalogue = Catalogue::read(include_str!("catalogue/aisc-shapes-v15.csv"))?;
        let length = |row: &Row, column| si(row, column, Dimension::Length).map(Length::from_si);
        let modulus =
            |row: &Row, column| si(row, column, Dimension::SectionModulus).map(SectionModulus::from_si);
        let second = |row: &Row, column| si(row, column, Dimension::SecondMoment).map(SecondMoment::from_si);
        let stress = |row: &Row, column| si(row, column, Dimension::Pressure).map(Pressure::from_si);
        catalogue
            .rows
            .iter()
            .map(|row| {
                Ok(Shape {
                    pipe: Pipe {
                        name: row.text("name")?.to_owned(),
                        diameter: length(row, "diameter_in")?,
                        wall: length(row, "wall_in")?,
                        pounds_per_foot: row.number("weight_lb_per_ft")?,
                        yield_low: stress(row, "yield_ksi")?,
                        yield_high: stress(row, "yield_high_ksi")?,
                        title: catalogue.title.clone(),
                        known: catalogue.known.clone(),
                    },
                    design_wall: length(row, "design_wall_in")?,
                    area: Area::from_si(si(row, "area_in2", Dimension::Area)?),
                    second_moment: second(row, "second_moment_in4")?,
                    elastic_modulus: modulus(row, "elastic_modulus_in3")?,
                    plastic_modulus: modulus(row, "plastic_modulus_in3")?,
                    radius_of_gyration: length(row, "radius_of_gyration_in")?,
                    torsional_constant: second(row, "torsional_constant_in4")?,
                })
            })
            .collect()
    };
    read().expect("the catalogue in the program is read by a test")
});

/// Every pipe of the shapes database, standard and extra strong.
#[must_use]
pub fn shapes() -> &'static [Shape] {
    &SHAPES
}

/// What a shape of the highway table looks like.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Form {
    /// Round.
    Pipe,
    /// Square tube.
    Square,
    /// An open C.
    C,
    /// A hot-rolled H.
    H,
    /// Roll-formed and open.
    RollForm,
}

/// One shape of the highway table.
#[derive(Debug, Clone, PartialEq)]
pub struct HighwayShape {
    /// What it looks like.
    pub form: Form,
    /// Its name there, with its size in millimetres.
    pub name: String,
    /// Diameter or width.
    pub size: Length,
    /// The other width.
    pub other: Length,
    /// Weight in kilograms a metre, as printed.
    pub kilograms_per_metre: f64,
    /// Yield as printed.
    pub yield_strength: Pressure,
    /// The publication.
    pub title: String,
    /// How well its values are known.
    pub known: String,
}

static HIGHWAY: LazyLock<Vec<HighwayShape>> = LazyLock::new(|| {
    let read = || -> Result<Vec<HighwayShape>, CatalogueError> {
        let catalogue = Catalogue::read(include_str!("catalogue/highway-table-710-03-1m.csv"))?;
        catalogue
            .rows
            .iter()
            .map(|row| {
                let form = match row.text("shape")? {
                    "pipe" => Form::Pipe,
                    "square" => Form::Square,
                    "c" => Form::C,
                    "h" => Form::H,
                    "roll-form" => Form::RollForm,
                    other => return Err(CatalogueError::Row(format!("no shape is called {other}"))),
                };
                Ok(HighwayShape {
                    form,
                    name: row.text("name")?.to_owned(),
                    size: Length::from_si(si(row, "size_mm", Dimension::Length)?),
                    other: Length::from_si(si(row, "other_mm", Dimension::Length)?),
                    kilograms_per_metre: row.number("weight_kg_per_m")?,
                    yield_strength: Pressure::from_si(si(row, "yield_MPa", Dimension::Pressure)?),
                    title: catalogue.title.clone(),
                    known: catalogue.known.clone(),
                })
            })
            .collect()
    };
    read().expect("the catalogue in the program is read by a test")
});

/// Every shape of the highway table. Strength of its open shapes needs a modulus from whoever sells them.
#[must_use]
pub fn highway_shapes() -> &'static [HighwayShape] {
    &HIGHWAY
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::member::aisc360_16::DesignWall;
    use crate::member::{SquareSizes, SquareTube, pipe};
    use crate::units::{Pure, inches, ksi, megapascals};

    #[test]
    fn each_shape_weighs_what_its_diameter_and_nominal_wall_make() {
        assert_eq!(shapes().len(), 22);
        for Shape { pipe, design_wall, .. } in shapes() {
            let (diameter, wall) = ((pipe.diameter / inches(1.0)).pure(), (pipe.wall / inches(1.0)).pure());
            let weight = 10.69 * (diameter - wall) * wall;
            assert!((weight / pipe.pounds_per_foot - 1.0).abs() < 0.006, "{}: {weight}", pipe.name);
            let worked = DesignWall { nominal: pipe.wall }.work(&mut Blank);
            let off = ((*design_wall - worked) / worked).pure();
            assert!((-0.004..0.0065).contains(&off), "{}: {off}", pipe.name);
            assert_eq!((pipe.yield_low, pipe.yield_high), (ksi(35.0), ksi(35.0)));
        }
    }

    /// Bending does not hang on them: moduli, radii and torsional constants of every row are what its dimensions make.
    #[test]
    fn the_conflicts_of_the_database_are_areas_and_one_second_moment() {
        let found: Vec<(&str, &str)> = shapes()
            .iter()
            .flat_map(|shape| {
                shape.conflicts().into_iter().map(|conflict| (shape.pipe.name.as_str(), conflict.property))
            })
            .collect();
        let areas = [
            "pipe 1 std",
            "pipe 1 xs",
            "pipe 1-1/4 xs",
            "pipe 2 std",
            "pipe 2 xs",
            "pipe 2-1/2 std",
            "pipe 2-1/2 xs",
            "pipe 3 std",
            "pipe 3-1/2 std",
            "pipe 3-1/2 xs",
            "pipe 4 std",
            "pipe 5 std",
            "pipe 5 xs",
            "pipe 6 std",
            "pipe 6 xs",
        ];
        let mut expected: Vec<(&str, &str)> = areas.iter().map(|name| (*name, "area")).collect();
        let after = expected.iter().position(|(name, _)| *name == "pipe 3 std").unwrap();
        expected.insert(after + 1, ("pipe 3 std", "second moment of area"));
        assert_eq!(found, expected);
        for shape in shapes() {
            for conflict in shape.conflicts() {
                let off = (conflict.worked.si / conflict.listed.si - 1.0).abs();
                assert!(off < 0.017, "{}: {conflict:?}", shape.pipe.name);
            }
        }
    }

    /// The area of Pipe 2 STD: listed 1.02 in², made 1.003 in².
    #[test]
    fn a_conflict_says_what_is_listed_and_what_is_made() {
        let shape = shapes().iter().find(|shape| shape.pipe.name == "pipe 2 std").unwrap();
        let conflict = &shape.conflicts()[0];
        assert!((conflict.listed.si / 0.0254_f64.powi(2) - 1.02).abs() < 1e-9);
        assert!((conflict.worked.si / 0.0254_f64.powi(2) - 1.0027).abs() < 1e-4);
    }

    #[test]
    fn the_pipes_of_the_highway_table_weigh_what_fence_pipe_does() {
        let pipes: Vec<_> = highway_shapes().iter().filter(|shape| shape.form == Form::Pipe).collect();
        assert_eq!(pipes.len(), 13);
        let mut unlike = Vec::new();
        for shape in pipes {
            assert!(shape.yield_strength >= megapascals(175.0) && shape.yield_strength <= megapascals(348.0));
            let nearest = pipe::of_diameter(shape.size)
                .map(|pipe| {
                    (pipe.pounds_per_foot * 0.453_592_37 / 0.3048 / shape.kilograms_per_metre - 1.0).abs()
                })
                .fold(f64::INFINITY, f64::min);
            if nearest > 0.015 {
                unlike.push(shape.name.as_str());
            }
        }
        assert_eq!(unlike, ["round tubing 42"]);
    }

    /// Plain sizes of the trade, no source: 2-1/2 in by 3/16, 3 in by 1/4, 2 in of 12 gauge.
    #[test]
    fn squares_of_the_highway_table_weigh_between_sharp_and_rounded_tube_of_plain_sizes() {
        let squares: Vec<_> = highway_shapes().iter().filter(|shape| shape.form == Form::Square).collect();
        let plain = [("square 64", 2.5, 0.1875), ("square 76", 3.0, 0.25), ("square 51", 2.0, 0.105)];
        assert_eq!(squares.len(), plain.len());
        for (shape, (name, width, wall)) in squares.into_iter().zip(plain) {
            assert_eq!(shape.name, name);
            let weight = |corner: Option<f64>| {
                let sizes =
                    SquareSizes { width: inches(width), wall: inches(wall), corner: corner.map(inches) };
                SquareTube::try_new(sizes).unwrap().area(&mut Blank).si() * 7850.0
            };
            let (rounded, sharp) = (weight(None), weight(Some(0.0)));
            let printed = shape.kilograms_per_metre;
            assert!(rounded < printed + 0.05 && printed - 0.05 < sharp, "{name}: {rounded} {sharp}");
        }
    }
}
