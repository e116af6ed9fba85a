//! What a check costs, and that the ledger which keeps nothing costs nothing.

use divan::{Bencher, black_box, counter::ItemsCount};
use fencegust::fence::{
    Bay, Condition, End, Fence, Post, PostKind, Rail, Rails, Role, Run, Screen, Section, Shape, Tube, Wall,
};
use fencegust::footing::Ground;
use fencegust::loads::BaseMoment;
use fencegust::member::Format;
use fencegust::member::PlasticModulus;
use fencegust::member::aisc360_16::{DesignMoment, Plastic};
use fencegust::screen::ChainLink;
use fencegust::units::{
    Length, PressurePerSpeedSquared, Quantity, Velocity, feet, inches, ksi, mph, psf_per_mph_squared,
};
use fencegust::verdict::{LimitGust, MomentRatio, run_verdict};
use fencegust::wind::asce7_16::{OpeningsFactor, ResultantHeight, VelocityPressure, WallPressure};
use fencegust::wind::{Code, Site, SiteValue, SiteValues};
use fencegust::workings::{Blank, Entry, Ledger};

fn main() {
    for at in 0..CHAINS {
        assert_eq!(by_rules(at, &mut Blank).si().to_bits(), by_hand(at).to_bits(), "the two chains are one");
    }
    divan::main();
}

/// A court side of 24 bays of 10 ft, 10 ft high: chain link, top rail, closed mesh over the whole height.
fn court_side() -> Fence {
    let bays = 24;
    let (width, height) = (feet(10.0), feet(10.0));
    let posts = (0..=bays).map(|at| Post {
        at: width * at as f64,
        role: if at == 0 || at == bays { Role::End } else { Role::Line },
        kind: 0,
        footing: None,
        shared_with: None,
    });
    let run = Run {
        name: "north side".into(),
        height,
        base_above_ground: feet(0.0),
        chain_link: Some(ChainLink { mesh: inches(1.75), wire: inches(0.148) }),
        rails: Rails { top: Some(Rail::of(inches(1.660))), middle: None, bottom: None },
        bays: vec![Bay::of(width); bays],
        posts: posts.collect(),
        screen: Some(Screen {
            name: "closed mesh".into(),
            solidity: 0.95,
            solidity_as_return: None,
            condition: Condition::Dry,
            over: Vec::new(),
            bottom: feet(0.0),
            top: height,
            first_bay: 0,
            end_bay: bays,
            windows: None,
            face: None,
            fastening: None,
        }),
        start: End::Free,
        finish: End::Free,
        guys: Vec::new(),
        braces: Vec::new(),
    };
    let kind = PostKind {
        name: "posts".into(),
        section: Section::Tube(Tube {
            shape: Shape::Round { girth: None, diameter: inches(2.875) },
            wall: Wall::Nominal(inches(0.203)),
            yield_strength: ksi(30.0),
            rust: inches(0.0),
        }),
        format: Format::Lrfd,
    };
    Fence {
        kinds: vec![kind],
        runs: vec![run],
        footings: Vec::new(),
        ground: Ground::default(),
        footing_method: None,
    }
}

fn open_country() -> Site {
    Code::Asce7_16.site(&SiteValues {
        wind_speed: Some(mph(115.0)),
        values: vec![SiteValue::Choice(1), SiteValue::Quantity(1.0), SiteValue::Quantity(0.0)],
    })
}

/// A run of 24 bays checked without workings: the aim is 15 microseconds at most.
#[divan::bench]
fn run_of_24_bays(bencher: Bencher<'_, '_>) {
    let (fence, site) = (court_side(), open_country());
    bencher.bench(|| run_verdict(black_box(&fence), 0, black_box(&site)));
}

/// How many chains of ten rules one round works, each for a post of its own.
const CHAINS: usize = 256;

struct Given {
    constant: PressurePerSpeedSquared,
    speed: Velocity,
    solidity: f64,
    height: Length,
    bay: Length,
    diameter: Length,
    inner: Length,
}

/// Inputs that no two chains share.
fn given(at: usize) -> Given {
    let step = at as f64;
    Given {
        constant: psf_per_mph_squared(0.00256),
        speed: mph(90.0 + 0.25 * step),
        solidity: 0.70 + 0.001 * step,
        height: feet(6.0 + 0.02 * step),
        bay: feet(8.0 + 0.01 * step),
        diameter: inches(2.375 + 0.005 * step),
        inner: inches(2.067 + 0.005 * step),
    }
}

/// Ten rules of wind, member and verdict, one after the other.
#[inline(always)]
fn by_rules(at: usize, ledger: &mut impl Ledger) -> Velocity {
    let Given { constant, speed, solidity, height, bay, diameter, inner } = given(at);
    let velocity_pressure = VelocityPressure {
        constant,
        exposure_coefficient: 0.849,
        topographic_factor: 1.0,
        directionality: 0.85,
        elevation_factor: 1.0,
        speed,
    }
    .work(ledger);
    let factor = OpeningsFactor { solidity }.work(ledger);
    let pressure = WallPressure { velocity_pressure, gust: 0.85, coefficient: 1.3, factor }.work(ledger);
    let bottom = feet(0.0);
    let arm = ResultantHeight { bottom, height, s_over_h: 1.0 }.work(ledger);
    let demand = BaseMoment { force: pressure * height * bay, arm }.work(ledger);
    let modulus = PlasticModulus { diameter, inner }.work(ledger);
    let nominal = Plastic { yield_strength: ksi(30.0), modulus }.work(ledger);
    let capacity = DesignMoment { resistance: 0.9, nominal }.work(ledger);
    let ratio = MomentRatio { demand, capacity }.work(ledger);
    LimitGust { gust: speed, ratio }.work(ledger)
}

/// The same ten on plain numbers in SI units, without rules and quantities.
#[inline(always)]
fn by_hand(at: usize) -> f64 {
    let Given { constant, speed, solidity, height, bay, diameter, inner } = given(at);
    let (constant, speed, height, bay) = (constant.si(), speed.si(), height.si(), bay.si());
    let (diameter, inner, yield_strength) = (diameter.si(), inner.si(), ksi(30.0).si());
    let velocity_pressure = constant * 0.849 * 1.0 * 0.85 * 1.0 * (speed * speed);
    let factor = 1.0 - (1.0 - solidity).powf(1.5);
    let pressure = velocity_pressure * 0.85 * 1.3 * factor;
    let arm = 0.0 + height * (0.5 + 0.05 * ((1.0_f64 - 0.8) / 0.2).clamp(0.0, 1.0));
    let demand = pressure * height * bay * arm;
    let modulus = (diameter * diameter * diameter - inner * inner * inner) / 6.0;
    let capacity = 0.9 * (yield_strength * modulus);
    let ratio = (demand / capacity).abs();
    speed * (1.0 / ratio).sqrt()
}

/// Ten rules worked and kept nowhere.
#[divan::bench]
fn ten_rules_on_blank(bencher: Bencher<'_, '_>) {
    bencher.counter(ItemsCount::new(CHAINS)).bench(|| {
        for at in 0..CHAINS {
            black_box(by_rules(black_box(at), &mut Blank).si());
        }
    });
}

/// The same expressions by hand.
#[divan::bench]
fn ten_rules_by_hand(bencher: Bencher<'_, '_>) {
    bencher.counter(ItemsCount::new(CHAINS)).bench(|| {
        for at in 0..CHAINS {
            black_box(by_hand(black_box(at)));
        }
    });
}

/// Ten rules worked and written down.
#[divan::bench]
fn ten_rules_kept(bencher: Bencher<'_, '_>) {
    bencher.counter(ItemsCount::new(CHAINS)).bench(|| {
        for at in 0..CHAINS {
            let mut ledger: Vec<Entry> = Vec::new();
            black_box(by_rules(black_box(at), &mut ledger).si());
            black_box(ledger);
        }
    });
}
