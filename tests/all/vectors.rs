//! The worked vectors and the five checks by which a wrong program would be found out.

use crate::command::vector;
use crate::support::{court_fabric, fence, json_of, lb_ft, site, site_by};
use fencegust::loads::{Dress, run_loads};
use fencegust::units::{Pressure, Pure, feet, mph, psf};
use fencegust::verdict::run_verdict;
use fencegust::wind::{Case, Code, Event, From, Panel};
use fencegust::workings::Blank;

#[test]
fn twenty_bays_of_solid_cloth_give_the_worked_moments() {
    let loads =
        run_loads(&fence(&[10.0; 20], 10.0, 1.0), 0, Dress::AsHung, &site(115.0, 1), Event::Design).unwrap();
    for (post, printed) in [(0, 18_573.0), (1, 30_400.0), (2, 20_914.0), (3, 16_288.0), (10, 14_847.0)] {
        assert!((lb_ft(loads.posts[post].moment) - printed).abs() <= 0.5, "post {}", post + 1);
    }
}

#[test]
fn twelve_bays_of_closed_mesh_give_the_worked_moments_ratios_and_gusts() {
    let mut fence = fence(&[10.0; 12], 10.0, 0.95);
    fence.runs[0].chain_link = Some(court_fabric());
    let verdict = run_verdict(&fence, 0, &site(115.0, 1)).unwrap();
    for (post, printed) in [(0, 17_735.0), (1, 29_282.0), (2, 20_377.0), (3, 14_792.0), (6, 14_717.0)] {
        assert!(
            (lb_ft(verdict.posts[post].design.unwrap().moment) - printed).abs() <= 0.5,
            "post {}",
            post + 1
        );
    }
    let up = |ratio: f64| (ratio * 100.0).ceil() / 100.0;
    for (post, printed) in [(0, 5.78), (1, 9.54), (6, 4.80)] {
        assert!((up(verdict.posts[post].ratio().unwrap()) - printed).abs() < 1e-9);
    }
    let gust = |post: usize| (verdict.posts[post].limit_gust / mph(1.0)).pure();
    assert_eq!((gust(1).round(), gust(6).round()), (34.0, 48.0));
}

#[test]
fn zones_along_a_run_share_out_to_the_posts_as_worked_by_hand() {
    for (height, printed) in [
        (6.0, &[15.317, 21.237, 13.596][..]),
        (10.0, &[15.667, 25.867, 18.000, 13.067, 10.133, 8.533, 7.333][..]),
    ] {
        let loads =
            run_loads(&fence(&[10.0; 12], height, 1.0), 0, Dress::AsHung, &site(115.0, 1), Event::Design)
                .unwrap();
        let along = loads.cases.iter().find(|case| case.case == Case::Along(From::Start)).unwrap();
        // Pressure with a coefficient of 1 on the height: q G s.
        let unit = 24.428_849 * 0.85 * height * 4.448_221_615_260_5;
        for (post, coefficient_feet) in printed.iter().enumerate() {
            let ours = along.shears[post].value / unit;
            assert!((ours - coefficient_feet).abs() <= 5.1e-4, "{height} ft, post {}: {ours}", post + 1);
        }
    }
}

/// From a survey to the post, edition by edition: Case A in psf and the moment of an inside post in lb-ft.
#[test]
fn the_solid_vector_comes_out_of_a_survey_by_each_edition() {
    // 14,847 and 26.994 with α 9.5 and 900 ft; 14,886 and 27.066 with α 9.8 and 2,460 ft.
    for (code, pressure, moment) in
        [("asce7-10", 26.994, 14_847.0), ("asce7-16", 26.994, 14_847.0), ("asce7-22", 27.066, 14_886.0)]
    {
        let survey = vector("20 x 10 ft", "1.0", "\"none\"").replace("asce7-16", code);
        let (answer, _) = json_of(&survey);
        let run = &answer["runs"][0];
        let bay = run["bays"][9]["pressure_pa"].as_f64().unwrap() / (4.448_221_615_260_5 / (0.3048 * 0.3048));
        assert!((bay - pressure).abs() < 5e-4, "{code}: {bay}");
        let post = run["posts"][10]["base_moment_n_m"].as_f64().unwrap() / (4.448_221_615_260_5 * 0.3048);
        assert!((post - moment).abs() < 0.5, "{code}: {post}");
        assert!(run["posts"][10]["governs"].as_str().unwrap().starts_with(code));
    }
}

#[test]
fn between_its_columns_the_figure_is_read_zone_by_zone_alike_by_each_edition() {
    let none = feet(0.0);
    for code in Code::ALL {
        let site = site_by(*code, 115.0, 1);
        let zones = |length: f64, from: From| {
            let panel = Panel {
                bottom: feet(10.0),
                height: feet(10.0),
                length: feet(length),
                solidity: 1.0,
                return_at_start: none,
                return_at_finish: none,
            };
            // At s/h 0.5 no reduction; the square case has q G and a C_f of 1.70 for B/s 2 to 20.
            let unit =
                site.pressures(&panel, Case::Square, Event::Design, &mut Blank).unwrap().unwrap().zones[0];
            let unit = (unit.pressure_from / psf(1.0)).pure() / 1.70;
            let along =
                site.pressures(&panel, Case::Along(from), Event::Design, &mut Blank).unwrap().unwrap();
            let coefficient = |pressure: Pressure| (pressure / psf(1.0)).pure() / unit;
            let mut of: Vec<(f64, f64)> = along
                .zones
                .iter()
                .map(|zone| (((zone.to - zone.from) / feet(1.0)).pure(), coefficient(zone.pressure_from)))
                .collect();
            if from == From::Finish {
                of.reverse();
            }
            of
        };
        for (length, printed) in [
            // 2s to 2.5s has no cell at B/s 2: that of B/s 3.
            (25.0, &[(10.0, 2.425), (10.0, 1.60), (5.0, 1.15)][..]),
            (
                120.0,
                &[
                    (10.0, 3.917),
                    (10.0, 2.55),
                    (10.0, 1.95),
                    (10.0, 1.317),
                    (10.0, 1.217),
                    (50.0, 0.917),
                    (20.0, 0.55),
                ],
            ),
        ] {
            for from in [From::Start, From::Finish] {
                let ours = zones(length, from);
                assert_eq!(ours.len(), printed.len());
                for ((wide, coefficient), (printed_wide, printed)) in ours.iter().zip(printed) {
                    assert!((wide - printed_wide).abs() < 1e-9, "{}: {wide}", code.key());
                    assert!(
                        (coefficient - printed).abs() < 5.1e-4,
                        "{}: {coefficient} for {printed}",
                        code.key()
                    );
                }
            }
        }
    }
}
