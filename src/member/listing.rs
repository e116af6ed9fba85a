//! Every catalogue pipe of a diameter, and where the catalogues disagree.

use super::pipe::{self, Pipe};
use super::shapes::{Form, highway_shapes, shapes};
use crate::units::{Length, Measure, Pressure, Pure, Quantity, System, Value};

/// One pipe of any catalogue.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Entry {
    /// Its name there.
    pub name: &'static str,
    /// Outside diameter.
    pub diameter: Length,
    /// Nominal wall, where the catalogue prints one.
    pub wall: Option<Length>,
    /// The lower yield it is listed with.
    pub yield_low: Pressure,
    /// The higher yield it is listed with.
    pub yield_high: Pressure,
    /// Pounds-force a foot.
    pub pounds_per_foot: f64,
    /// The publication.
    pub title: &'static str,
    /// How well its values are known.
    pub known: &'static str,
    /// Whether a wall that is not known may be this one: fence pipe alone, not pipe of buildings.
    pub is_candidate: bool,
}

impl Entry {
    fn of(pipe: &'static Pipe, is_candidate: bool) -> Self {
        Self {
            name: &pipe.name,
            diameter: pipe.diameter,
            wall: Some(pipe.wall),
            yield_low: pipe.yield_low,
            yield_high: pipe.yield_high,
            pounds_per_foot: pipe.pounds_per_foot,
            title: &pipe.title,
            known: &pipe.known,
            is_candidate,
        }
    }
}

/// Two entries of different publications, of one diameter, that do not say the same.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Disagreement {
    /// The one.
    pub one: Entry,
    /// The other.
    pub other: Entry,
    /// Whether both go by one name.
    pub same_name: bool,
    /// Whether their walls differ.
    pub wall: bool,
    /// Whether their yields differ.
    pub yield_strength: bool,
}

impl Disagreement {
    fn between(one: Entry, other: Entry) -> Option<Self> {
        let wall = match (one.wall, other.wall) {
            (Some(one), Some(other)) => ((one - other) / one).pure().abs() > SAME,
            _ => false,
        };
        let differ = |one: Pressure, other: Pressure| ((one - other) / one).pure().abs() > SAME;
        let yield_strength =
            differ(one.yield_low, other.yield_low) || differ(one.yield_high, other.yield_high);
        let said = Self { one, other, same_name: one.name == other.name, wall, yield_strength };
        (one.title != other.title && (wall || yield_strength)).then_some(said)
    }

    /// In one sentence.
    #[must_use]
    pub fn told(&self, system: System) -> String {
        let small = |length: Length| Value::new(length, Measure::Small).written(system);
        let stress = |entry: Entry| {
            let written = |value: Pressure| Value::new(value, Measure::Stress).written(system);
            if entry.yield_low == entry.yield_high {
                written(entry.yield_low)
            } else {
                format!("{} to {}", written(entry.yield_low), written(entry.yield_high))
            }
        };
        let mut differences = Vec::new();
        if let (true, Some(one), Some(other)) = (self.wall, self.one.wall, self.other.wall) {
            differences.push(format!("wall {} and {}", small(one), small(other)));
        }
        if self.yield_strength {
            differences.push(format!("yield {} and {}", stress(self.one), stress(self.other)));
        }
        format!(
            "{} ({}) and {} ({}): {}",
            self.one.name,
            self.one.title,
            self.other.name,
            self.other.title,
            differences.join("; ")
        )
    }
}

/// Values this near are one value in two roundings.
const SAME: f64 = 0.005;

/// Every catalogue pipe of a diameter, fence pipe first, and where the catalogues disagree.
#[derive(Debug, Clone, PartialEq)]
pub struct Listing {
    /// The pipes.
    pub entries: Vec<Entry>,
    /// Each two of different publications that do not say the same.
    pub disagreements: Vec<Disagreement>,
}

/// The pipes of a diameter in every catalogue, within the tolerance of pipe, and where the catalogues disagree.
#[must_use]
pub fn listing(diameter: Length) -> Listing {
    let mut entries: Vec<Entry> = pipe::of_diameter(diameter).map(|pipe| Entry::of(pipe, true)).collect();
    entries.extend(
        shapes()
            .iter()
            .filter(|shape| pipe::is_near(shape.pipe.diameter, diameter))
            .map(|shape| Entry::of(&shape.pipe, false)),
    );
    entries.extend(
        highway_shapes()
            .iter()
            .filter(|shape| shape.form == Form::Pipe && pipe::is_near(shape.size, diameter))
            .map(|shape| Entry {
                name: &shape.name,
                diameter: shape.size,
                wall: None,
                yield_low: shape.yield_strength,
                yield_high: shape.yield_strength,
                pounds_per_foot: shape.kilograms_per_metre * POUNDS_PER_FOOT,
                title: &shape.title,
                known: &shape.known,
                is_candidate: false,
            }),
    );
    let mut disagreements = Vec::new();
    for (at, one) in entries.iter().enumerate() {
        disagreements
            .extend(entries[at + 1..].iter().filter_map(|other| Disagreement::between(*one, *other)));
    }
    Listing { entries, disagreements }
}

/// Pounds a foot in a kilogram a metre.
const POUNDS_PER_FOOT: f64 = 0.3048 / 0.453_592_37;

/// Every diameter of fence pipe and pipe of buildings, from small to large.
#[must_use]
pub fn diameters() -> Vec<Length> {
    let mut diameters: Vec<Length> = pipe::all()
        .iter()
        .map(|pipe| pipe.diameter)
        .chain(shapes().iter().map(|shape| shape.pipe.diameter))
        .collect();
    diameters.sort_by(|one, other| one.si().total_cmp(&other.si()));
    diameters.dedup_by(|one, other| pipe::is_near(*one, *other));
    diameters
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::inches;

    #[test]
    fn pipe_of_the_highway_table_is_listed_in_pounds_a_foot() {
        // A pound is 0.453 592 37 kg, a foot 0.3048 m.
        let table = highway_shapes().iter().find(|shape| shape.name == "grade 1 pipe 73").unwrap();
        let listed = listing(inches(2.875));
        let found = listed.entries.iter().find(|entry| entry.name == "grade 1 pipe 73").unwrap();
        let kilograms_per_metre = found.pounds_per_foot * 0.453_592_37 / 0.3048;
        assert!((kilograms_per_metre - table.kilograms_per_metre).abs() < 1e-9);
    }

    #[test]
    fn a_diameter_lists_every_pipe_of_it() {
        let names: Vec<_> = listing(inches(2.875)).entries.iter().map(|entry| entry.name).collect();
        assert_eq!(
            names,
            [
                "pipe 2-1/2 std",
                "light pipe 2-1/2",
                "pipe 2-1/2 std",
                "pipe 2-1/2 xs",
                "grade 1 pipe 73",
                "grade 2 pipe 73"
            ]
        );
        assert!(listing(inches(2.6)).entries.is_empty());
    }

    #[test]
    fn pipe_of_buildings_is_no_candidate_for_an_unknown_wall() {
        for diameter in diameters() {
            for entry in listing(diameter).entries {
                let fence = pipe::of_diameter(diameter)
                    .any(|pipe| pipe.name == entry.name && pipe.title == entry.title);
                assert_eq!(entry.is_candidate, fence, "{}", entry.name);
                assert!(!(entry.is_candidate && entry.name.ends_with(" xs")));
            }
        }
    }

    #[test]
    fn catalogues_disagree_on_one_pipes_yield_and_on_walls_of_one_diameter() {
        let found = listing(inches(2.875)).disagreements;
        let of = |one: &str, other: &str, same_name: bool| {
            found
                .iter()
                .find(|said| said.one.name == one && said.other.name == other && said.same_name == same_name)
                .map(|said| (said.wall, said.yield_strength))
        };
        assert_eq!(of("pipe 2-1/2 std", "light pipe 2-1/2", false), Some((true, true)));
        assert_eq!(of("pipe 2-1/2 std", "pipe 2-1/2 std", true), Some((false, true)));
        assert_eq!(of("pipe 2-1/2 std", "pipe 2-1/2 xs", false), Some((true, true)));
        assert_eq!(of("pipe 2-1/2 std", "grade 1 pipe 73", false), Some((false, true)));
        // 345 MPa is 50.04 ksi: one value in two roundings.
        assert_eq!(of("light pipe 2-1/2", "grade 2 pipe 73", false), None);
        // Two rows of one publication do not disagree: they are two pipes.
        assert!(found.iter().all(|said| said.one.title != said.other.title));
    }

    #[test]
    fn a_disagreement_is_told_with_both_publications() {
        let listing = listing(inches(2.875));
        let told = listing.disagreements[0].told(System::Us);
        assert_eq!(
            told,
            "pipe 2-1/2 std (Fence pipe of ASTM F1083-18, schedule 40 (group IA of ASTM F1043)) and light pipe \
             2-1/2 (Light-wall high-strength fence pipe, group IC of ASTM F1043-18(2022)): wall 0.203 in and \
             0.16 in; yield 30.00 ksi to 50.00 ksi and 50.00 ksi"
        );
        assert!(listing.disagreements[0].told(System::Si).contains("wall 5.16 mm and 4.06 mm"));
    }

    #[test]
    fn diameters_stand_once_and_in_order() {
        let inch = |length: Length| (length / inches(1.0)).pure();
        let found: Vec<f64> = diameters().into_iter().map(inch).collect();
        let expected = [1.315, 1.66, 1.9, 2.375, 2.875, 3.5, 4.0, 4.5, 5.563, 6.625, 8.625];
        assert_eq!(found.len(), expected.len());
        assert!(found.iter().zip(expected).all(|(found, expected)| (found - expected).abs() < 1e-9));
    }
}
