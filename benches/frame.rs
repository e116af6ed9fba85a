//! What a frame costs: a straight run of posts with two rails, and ten times as much of it; a closed court.
//!
//! Before the benchmarks one ratio is taken in one run and held: ten times the length may take twelve times as long at
//! most and keep ten times the numbers, and a thousand posts half a second.

use divan::{Bencher, black_box};
use fencegust::frame::{
    Axes, Axis, Beam, Frame, FrameBuilder, Freedom, Freedoms, Joint, Loads, Material, MemberLoad, Order,
    Section, Triple,
};
use fencegust::units::{Quantity, feet, inches, ksi, metres, pound_feet, pounds};
use std::f64::consts::PI;
use std::process::Command;
use std::time::{Duration, Instant};

/// Posts of 10 ft at 10 ft with a middle and a top rail that are held to them in translation only, loaded along y.
fn run(posts: usize, closed: bool) -> (Frame, Loads) {
    let inch = inches(1.0);
    let tube = |area: f64, second_moment: f64| {
        let section = Section::round(inch * inch * area, inch * inch * inch * inch * second_moment);
        Beam::of(section, Material { elastic: ksi(29_000.0), shear: ksi(11_200.0) })
    };
    let (post, rail) = (tube(1.593, 1.444), tube(0.626, 0.184));
    let spacing = feet(10.0);
    let place = |at: usize, height: f64| {
        let (along, z) = (spacing * at as f64, feet(height));
        if closed {
            let radius = spacing * (posts as f64 / (2.0 * PI));
            let angle = along.si() / radius.si();
            Triple { x: radius * angle.cos(), y: radius * angle.sin(), z }
        } else {
            Triple { x: along, y: metres(0.0), z }
        }
    };
    let (mut builder, mut loads) = (FrameBuilder::new(), Loads::new());
    let (mut first, mut before): (Option<[Joint; 2]>, Option<[Joint; 2]>) = (None, None);
    for at in 0..posts {
        let foot = builder.joint(place(at, 0.0));
        // All joints of one place together: that of the post, then that of the rail.
        let [(middle, middle_rail), (top, top_rail)] =
            [5.0, 10.0].map(|height| (builder.joint(place(at, height)), builder.joint(place(at, height))));
        let (meetings, rails) = ([middle, top], [middle_rail, top_rail]);
        builder.fix(foot, Freedoms::MOVING);
        for axis in [Axis::X, Axis::Y, Axis::Z] {
            builder.turning_spring(foot, axis, pound_feet(250_000.0));
        }
        for (start, finish) in [(foot, meetings[0]), (meetings[0], meetings[1])] {
            let member = builder.beam(start, finish, post);
            let load = Triple::along_y(pounds(20.0) / feet(1.0));
            loads.on_member(member, MemberLoad::Even { load, axes: Axes::Frame });
        }
        for (meeting, joint) in meetings.into_iter().zip(rails) {
            builder.hold(meeting, joint, Freedoms::MOVING);
        }
        match before {
            Some(before) => {
                for (start, finish) in before.into_iter().zip(rails) {
                    builder.beam(start, finish, rail);
                }
            }
            None => {
                first = Some(rails);
                for joint in rails {
                    builder.fix(joint, Freedoms::of(&[Freedom::AboutX]));
                }
            }
        }
        before = Some(rails);
    }
    if closed {
        for (start, finish) in before.into_iter().flatten().zip(first.into_iter().flatten()) {
            builder.beam(start, finish, rail);
        }
    }
    (builder.build().expect("a run that is whole"), loads)
}

/// What the child processes are told by.
const POSTS: &str = "FRAME_BENCH_POSTS";

/// Seconds this process has been on a processor, where the system tells; else seconds since it was first asked.
fn spent(begun: Instant) -> f64 {
    // The system brings its count up to now when a process steps off the processor.
    std::thread::sleep(Duration::from_micros(50));
    let told = std::fs::read_to_string("/proc/self/schedstat").unwrap_or_default();
    match told.split_whitespace().next().and_then(|nanoseconds| nanoseconds.parse::<f64>().ok()) {
        Some(nanoseconds) if nanoseconds > 0.0 => 1e-9 * nanoseconds,
        _ => begun.elapsed().as_secs_f64(),
    }
}

/// One run in this process, from joints to solution: seconds, freedoms, numbers kept.
fn once(posts: usize) -> [f64; 3] {
    let clock = Instant::now();
    let begun = spent(clock);
    let (frame, loads) = run(posts, false);
    let solution = frame.solve(&loads, Order::First).expect("a run that stands");
    assert!(solution.residual() < 1e-9);
    black_box(&solution);
    [spent(clock) - begun, frame.freedoms() as f64, frame.stored() as f64]
}

/// The same in a process of its own, so that no run finds memory that another has warmed.
fn apart(posts: usize) -> [f64; 3] {
    let this = std::env::current_exe().expect("the benchmark's own path");
    let told = Command::new(this).env(POSTS, posts.to_string()).output().expect("a child of the benchmark");
    let text = String::from_utf8_lossy(&told.stdout);
    let mut figures =
        text.split_whitespace().map(|figure| figure.parse().expect("three figures from the child"));
    std::array::from_fn(|_| figures.next().expect("three figures from the child"))
}

fn main() {
    if let Ok(posts) = std::env::var(POSTS) {
        let [seconds, freedoms, kept] = once(posts.parse().expect("a number of posts"));
        println!("{seconds} {freedoms} {kept}");
        return;
    }
    // The least of several, taken in turn, since other work on the machine only ever adds.
    let rounds: Vec<_> = (0..9).map(|_| (apart(1000), apart(10_000))).collect();
    let least = |of: fn(&([f64; 3], [f64; 3])) -> f64| rounds.iter().map(of).fold(f64::INFINITY, f64::min);
    let (short, long) = (least(|round| round.0[0]), least(|round| round.1[0]));
    let ([_, freedoms, kept], [_, freedoms_of_ten, kept_of_ten]) = rounds[0];
    let (times, kept_times) = (long / short, kept_of_ten / kept);
    println!(
        "1000 posts: {freedoms} freedoms, {kept} numbers kept, {:.1} ms; 10,000 posts: {freedoms_of_ten}, \
         {kept_of_ten}, {:.1} ms: {times:.2} times as long, {kept_times:.3} times the numbers",
        1e3 * short,
        1e3 * long
    );
    assert!(freedoms > 12_000.0);
    assert!(short < 0.5, "a thousand posts take {short} s");
    assert!(times <= 12.0, "ten times the run takes {times} times as long");
    assert!(kept_times < 10.1, "ten times the run keeps {kept_times} times the numbers");
    divan::main();
}

/// From joints to solution.
#[divan::bench(args = [100, 1000, 10_000], sample_count = 5, sample_size = 1)]
fn straight_run(bencher: Bencher<'_, '_>, posts: usize) {
    bencher.bench(|| {
        let (frame, loads) = run(posts, false);
        frame.solve(&loads, Order::First).map(|solution| solution.residual())
    });
}

/// A court closed to a ring, numbered once round.
#[divan::bench(args = [100, 1000], sample_count = 5, sample_size = 1)]
fn closed_court(bencher: Bencher<'_, '_>, posts: usize) {
    bencher.bench(|| {
        let (frame, loads) = run(posts, true);
        frame.solve(&loads, Order::First).map(|solution| solution.residual())
    });
}

/// The solution alone, in second order.
#[divan::bench(args = [1000], sample_count = 5, sample_size = 1)]
fn second_order(bencher: Bencher<'_, '_>, posts: usize) {
    let (frame, loads) = run(posts, false);
    bencher.bench(|| frame.solve(&loads, Order::Second).map(|solution| solution.residual()));
}
