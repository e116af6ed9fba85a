//! What holds one cloth of Tarnwick Green, asked through the public library: 60 ft by 9 ft under 10 psf.

use fencegust::fastening::lacing::{Style, Wrap};
use fencegust::fastening::membrane::Strip;
use fencegust::fastening::order::{Asked, Fixing, order};
use fencegust::fastening::rail::{Span, moment};
use fencegust::fastening::rope::{Fibre, breaking};
use fencegust::fastening::ties::{Age, Hold, Panel, Row, Rows, lightest_class, strength};
use fencegust::fastening::unzip::{Tie, after_the_first, at_both_ends};
use fencegust::fastening::{Checked, Part, checked};
use fencegust::report::workings;
use fencegust::units::{Force, Pure, System, feet, inches, pound_feet, pounds, pounds_per_foot, psf};
use fencegust::workings::Entry;

fn cloth(rows: &[Row]) -> Hold {
    let panel = Panel { length: feet(60.0), height: feet(9.0) };
    Hold::try_new(panel, Rows::try_new(rows).unwrap(), inches(12.0)).unwrap()
}

#[test]
fn fifty_pound_ties_hold_when_new_and_are_over_when_aged() {
    let mut ledger = Vec::new();
    let pull = cloth(&[Row::Top, Row::Bottom]).pull(Row::Top, psf(10.0), &mut ledger).unwrap();
    let held = |age, ledger: &mut Vec<Entry>| {
        let strength = strength(Some(pounds(50.0)), age, ledger).unwrap();
        checked(Part::Tie, pull.nominal, strength, ledger).unwrap()
    };
    let (new, aged) = (held(Age::New, &mut ledger), held(Age::Aged, &mut ledger));
    assert_eq!((new.is_over(), aged.is_over()), (Some(false), Some(true)));
    let Checked::Against { ratio, .. } = new else { panic!("{new:?}") };
    assert!((ratio - 0.9).abs() < 1e-12);
    // The grommet beside it has no strength anybody stated: it is not checked, whatever the tie does.
    let grommet = checked(Part::Grommet, pull.nominal, None, &mut ledger).unwrap();
    assert_eq!(grommet.is_over(), None);
    assert!(grommet.ask().unwrap().contains("tears out"));
    assert_eq!(lightest_class(pull.twice, Age::Aged, &mut ledger).unwrap().strength, pounds(250.0));
}

#[test]
fn the_end_ties_go_first_and_take_the_row_with_them() {
    // Twice the pull on the first three ties, as near a free end.
    let ties: Vec<Tie> = (0..61)
        .map(|tie| Tie { pull: pounds(if tie < 3 { 60.0 } else { 30.0 }), strength: pounds(50.0) })
        .collect();
    let mut ledger = Vec::new();
    let [low, high] = at_both_ends(&ties, &mut ledger).unwrap();
    assert!(low.runs_out() && high.runs_out());
    assert_eq!(low.rounds[0], [0, 1, 2]);
    let (first, _) = after_the_first(&ties, 1.5, &mut ledger).unwrap();
    assert_eq!(first.tie, 0);
    assert!((first.at - 5.0 / 6.0).abs() < 1e-12);
}

#[test]
fn held_at_its_two_upright_edges_it_pulls_a_grommet_with_124_pounds_and_an_end_post_with_1130() {
    let strip = Strip {
        pressure: psf(10.0),
        span: feet(10.0),
        stiffness: pounds_per_foot(5000.0),
        slack: 0.01,
        width: inches(12.0),
    };
    let mut ledger = Vec::new();
    let held = strip.held(&mut ledger).unwrap();
    let in_pounds = |force: Force| (force / pounds(1.0)).pure();
    assert_eq!(in_pounds(held.edge).round(), 124.0);
    assert_eq!((in_pounds(held.in_plane(feet(10.0), &mut ledger).unwrap()) / 10.0).round(), 113.0);
    let mut sheet = Vec::new();
    workings("cloth at two edges", &ledger, System::Us, &mut sheet).unwrap();
    let sheet = String::from_utf8(sheet).unwrap();
    assert!(sheet.contains("T³ + EA e₀ T² − EA w²L²/24 = 0 by Newton's method"), "{sheet}");
    assert!(sheet.contains("taken: ours: at a sag of a tenth of the span"), "{sheet}");
}

#[test]
fn lacing_rail_and_order_of_the_same_cloth() {
    let mut ledger = Vec::new();
    let wrap = Wrap { rail: inches(1.66), rope: inches(0.25), offset: inches(1.0), spacing: inches(12.0) };
    let per_foot = wrap.rope_per_length(Style::Plain, &mut ledger).unwrap();
    assert!((per_foot - 1.17).abs() < 0.005);
    let rope = breaking(Fibre::Polypropylene, inches(0.25)).unwrap().least;
    let laced = wrap.check(pounds(45.0), Some(rope), 3.0, &mut ledger).unwrap();
    assert_eq!(laced.is_over(), Some(false));
    let strip = cloth(&[Row::Top, Row::Bottom]).strip(Row::Top, &mut ledger).unwrap();
    let rail = moment(psf(10.0), strip, feet(10.0), Span::BesideSplice, &mut ledger).unwrap();
    assert!(((rail / pound_feet(562.5)).pure() - 1.0).abs() < 1e-12);
    let asked = Asked {
        length: feet(60.0),
        height: feet(9.0),
        rows: Rows::try_new(&[Row::Top, Row::Bottom, Row::Sides]).unwrap(),
        spacing: inches(12.0),
        fixing: Fixing::Ties,
        longest: None,
    };
    assert_eq!(order(&asked, &mut ledger).unwrap().ties, 138);
}
