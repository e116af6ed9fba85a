//! Sketches of what to measure on a fence and where, for the printed form. Those of a run stand on several pages,
//! and each page gives them names of their own.

use super::svg::{About, At, Lettering, Pen, Svg, at};

const SMALL: Lettering = Lettering::of(9.5);
const LABEL: Lettering = Lettering::of(10.5).bold();
const PAPER: &str = "#fff";
/// Steel seen from the front: a grey that any printer makes of few dots.
const STEEL: &str = "#eee";

/// The ground from one place to another, with a few strokes below it.
fn ground(drawing: &mut Svg, from: At, right: f64) {
    drawing.line(from, at(right, from.y), Pen::INK);
    let mut x = from.x + 5.0;
    while x < right {
        drawing.line(at(x, from.y), at(x - 5.0, from.y + 6.0), Pen::RULED);
        x += 14.0;
    }
}

/// Concrete round a post, seen from the side: a flat mound with some stones.
fn mound(drawing: &mut Svg, middle: At, reach: f64) {
    drawing.curve(
        middle.by(-reach, 0.0),
        [middle.by(-reach * 0.7, -9.0), middle.by(reach * 0.7, -9.0)],
        middle.by(reach, 0.0),
        Pen::INK,
    );
    for (x, y) in [(-0.7, 5.0), (-0.35, 11.0), (0.0, 5.0), (0.4, 10.0), (0.75, 5.0)] {
        drawing.ellipse(middle.by(reach * x, y), at(1.6, 1.1), PAPER, Pen::RULED);
    }
}

/// A fence seen from inside: heights, bays and cloth.
pub(super) fn elevation(page: usize) -> Svg {
    let mut drawing = Svg::new(&About {
        id: &format!("elevation-{page}"),
        title: "The fence seen from inside: what to measure",
        desc: "Posts are numbered from your left. Bays run from the middle of one post to the middle of the next. The \
               fence is measured from the ground to the top rail; the cloth from its lower edge to its top, and from \
               the ground to its lower edge; its width from tension bar to tension bar. A gate is a bay of its own.",
        size: at(400.0, 178.0),
    });
    let (top, foot) = (52.0, 134.0);
    let posts = [26.0, 76.0, 148.0, 220.0, 258.0, 330.0];
    ground(&mut drawing, at(6.0, foot), 394.0);
    drawing.line(at(posts[0], top + 2.0), at(posts[3], top + 2.0), Pen::THICK);
    drawing.line(at(posts[4], top + 2.0), at(posts[5], top + 2.0), Pen::THICK);
    // The gate leaf.
    drawing.rectangle(at(225.0, 62.0), at(253.0, 129.0), "none", Pen::INK);
    drawing.line(at(225.0, 129.0), at(253.0, 62.0), Pen::THIN);
    // The cloth, with tension bars beside the end post and the gate post.
    let (cloth_left, cloth_right, cloth_top, cloth_foot) = (33.0, 213.0, 66.0, 117.0);
    drawing.rectangle(at(cloth_left, cloth_top), at(cloth_right, cloth_foot), PAPER, Pen::INK);
    let mut x = cloth_left + 8.0;
    while x < cloth_right {
        drawing.line(at(x, cloth_foot), at((x + 14.0).min(cloth_right), cloth_foot - 16.0), Pen::RULED);
        drawing.line(at(x, cloth_top + 14.0), at((x + 12.0).min(cloth_right), cloth_top), Pen::RULED);
        x += 18.0;
    }
    for bar in [cloth_left, cloth_right] {
        drawing.line(at(bar, top + 5.0), at(bar, foot - 4.0), Pen::THICK);
    }
    for (number, x) in posts.iter().enumerate() {
        let half = if matches!(number, 1 | 2) { 2.5 } else { 3.5 };
        drawing.rectangle(at(x - half, top - 4.0), at(x + half, foot), STEEL, Pen::INK);
        drawing.ellipse(at(*x, 38.0), at(7.5, 7.5), PAPER, Pen::RULED);
        drawing.text(at(*x, 41.5), &(number + 1).to_string(), SMALL.middle().bold());
        drawing.line(at(*x, foot + 2.0), at(*x, foot + 21.0), Pen::HIDDEN);
    }
    let names = ["bay 1", "bay 2", "bay 3", "gate", "bay 5"];
    for (pair, name) in posts.windows(2).zip(names) {
        drawing.dimension(at(pair[0], foot + 17.0), at(pair[1], foot + 17.0), Pen::RULED);
        drawing.text(at((pair[0] + pair[1]) / 2.0, foot + 28.0), name, SMALL.middle());
    }
    drawing.text(at(6.0, foot + 41.0), "bays", LABEL);
    drawing.text(at(34.0, foot + 41.0), "centre of a post to centre of the next, along the ground", SMALL);
    drawing.dimension(at(cloth_left, 22.0), at(cloth_right, 22.0), Pen::RULED);
    for bar in [cloth_left, cloth_right] {
        drawing.line(at(bar, 18.0), at(bar, top + 3.0), Pen::HIDDEN);
    }
    drawing.text(
        at((cloth_left + cloth_right) / 2.0, 14.0),
        "cloth width: tension bar to tension bar",
        SMALL.middle(),
    );
    drawing.dimension(at(92.0, cloth_top), at(92.0, cloth_foot), Pen::RULED);
    drawing.rectangle(at(96.0, 79.0), at(133.0, 101.0), PAPER, Pen { width: 0.0, ..Pen::RULED });
    drawing.text(at(97.0, 88.0), "height", LABEL);
    drawing.text(at(97.0, 99.0), "cloth", SMALL);
    drawing.dimension(at(92.0, cloth_foot), at(92.0, foot), Pen::RULED);
    drawing.text(at(97.0, 129.0), "bottom", LABEL);
    drawing.line(at(cloth_right, cloth_top), at(200.0, cloth_top), Pen::RULED);
    drawing.dimension(at(185.0, cloth_top), at(185.0, foot), Pen::RULED);
    drawing.rectangle(at(187.0, 79.0), at(209.0, 91.0), PAPER, Pen { width: 0.0, ..Pen::RULED });
    drawing.text(at(189.0, 89.0), "top", LABEL);
    drawing.line(at(posts[5] + 4.0, top), at(352.0, top), Pen::RULED);
    drawing.dimension(at(346.0, top), at(346.0, foot), Pen::RULED);
    drawing.text(at(351.0, 90.0), "height", LABEL);
    drawing.text(at(351.0, 101.0), "fence", SMALL);
    drawing.text(at(272.0, 72.0), "top rail", SMALL);
    drawing.line(at(290.0, 63.0), at(290.0, top + 4.0), Pen::RULED);
    drawing
}

/// Where you stand: inside, facing the fence.
pub(super) fn standing(page: usize) -> Svg {
    let mut drawing = Svg::new(&About {
        id: &format!("standing-{page}"),
        title: "Where you stand",
        desc: "Seen from above: you stand inside the court and face the fence. Post 1 and the start of the side are at \
               your left hand, the finish at your right. The fence faces the compass side you look to.",
        size: at(200.0, 178.0),
    });
    drawing.rectangle(at(24.0, 62.0), at(176.0, 170.0), PAPER, Pen::INK);
    drawing.line(at(24.0, 62.0), at(176.0, 62.0), Pen { width: 3.0, ..Pen::INK });
    drawing.rectangle(at(58.0, 78.0), at(142.0, 162.0), "none", Pen::HIDDEN);
    for x in [24.0, 48.0, 78.0, 108.0, 138.0, 176.0] {
        drawing.ellipse(at(x, 62.0), at(3.4, 3.4), PAPER, Pen::INK);
    }
    drawing.text(at(24.0, 52.0), "1", LABEL.middle());
    drawing.text(at(176.0, 52.0), "last", LABEL.middle());
    drawing.text(at(14.0, 38.0), "start", LABEL);
    drawing.text(at(186.0, 38.0), "finish", LABEL.end());
    // Somebody seen from above: shoulders and head.
    drawing.ellipse(at(100.0, 122.0), at(15.0, 6.5), PAPER, Pen::INK);
    drawing.ellipse(at(100.0, 121.0), at(6.0, 6.5), STEEL, Pen::INK);
    drawing.arrow(at(100.0, 110.0), at(100.0, 70.0), Pen::INK);
    drawing.arrow(at(100.0, 58.0), at(100.0, 30.0), Pen::INK);
    drawing.text(at(100.0, 22.0), "faces", LABEL.middle());
    drawing.text(at(100.0, 11.0), "north, east, …", SMALL.middle());
    drawing.arrow(at(84.0, 122.0), at(34.0, 122.0), Pen::THIN);
    drawing.arrow(at(116.0, 122.0), at(166.0, 122.0), Pen::THIN);
    drawing.text(at(41.0, 116.0), "left", SMALL.middle());
    drawing.text(at(159.0, 116.0), "right", SMALL.middle());
    drawing.text(at(100.0, 143.0), "you, inside,", SMALL.middle());
    drawing.text(at(100.0, 155.0), "facing the fence", SMALL.middle());
    drawing
}

/// A tape round a post.
pub(super) fn girth() -> Svg {
    let mut drawing = Svg::new(&About {
        id: "girth",
        title: "girth: a tape round the post",
        desc: "A tape is pulled tight all the way round the bare post, a hand above the concrete. Where its nought meets \
               it again the girth is read.",
        size: at(200.0, 150.0),
    });
    let foot = 122.0;
    ground(&mut drawing, at(8.0, foot), 192.0);
    mound(&mut drawing, at(80.0, foot), 48.0);
    drawing.area(
        &[at(58.0, 8.0), at(102.0, 8.0), at(102.0, foot - 6.0), at(58.0, foot - 6.0)],
        STEEL,
        Pen::INK,
    );
    // The tape goes round in front and its end runs off to the right.
    for y in [64.0, 74.0] {
        drawing.curve(
            at(57.0, y - 4.0),
            [at(62.0, y + 6.0), at(98.0, y + 6.0)],
            at(103.0, y - 4.0),
            Pen::INK,
        );
    }
    drawing.line(at(57.0, 60.0), at(57.0, 70.0), Pen::INK);
    drawing.line(at(103.0, 60.0), at(103.0, 70.0), Pen::INK);
    for (x, y) in [(64.0, 67.0), (70.0, 69.5), (76.0, 71.0), (82.0, 71.0), (88.0, 70.5), (94.0, 68.5)] {
        drawing.line(at(x, y), at(x, y + 3.5), Pen::RULED);
    }
    drawing.line(at(103.0, 60.0), at(134.0, 46.0), Pen::INK);
    drawing.line(at(103.0, 70.0), at(136.0, 55.0), Pen::INK);
    drawing.ellipse(at(143.0, 47.0), at(10.0, 10.0), PAPER, Pen::INK);
    drawing.ellipse(at(143.0, 47.0), at(2.0, 2.0), "#000", Pen::RULED);
    drawing.text(at(124.0, 28.0), "girth", LABEL);
    drawing.text(at(124.0, 80.0), "tight, on", SMALL);
    drawing.text(at(124.0, 91.0), "bare steel", SMALL);
    drawing.dimension(at(44.0, 72.0), at(44.0, foot - 6.0), Pen::RULED);
    drawing.text(at(40.0, 92.0), "a hand", SMALL.end());
    drawing.text(at(40.0, 103.0), "above", SMALL.end());
    drawing.text(at(80.0, 146.0), "concrete", SMALL.middle());
    drawing
}

/// A caliper on the rim of an open post.
pub(super) fn wall() -> Svg {
    let mut drawing = Svg::new(&About {
        id: "wall",
        title: "measured_wall: a caliper on the open top of an end post",
        desc: "The cap of an end post is off. The jaws of a caliper close on the rim of the tube, one jaw inside and one \
               outside. It is measured at three places round the rim; the least counts.",
        size: at(200.0, 150.0),
    });
    let middle = at(70.0, 74.0);
    drawing.line(middle.by(-46.0, 0.0), at(24.0, 140.0), Pen::INK);
    drawing.line(middle.by(46.0, 0.0), at(116.0, 140.0), Pen::INK);
    drawing.ellipse(middle, at(46.0, 17.0), STEEL, Pen::INK);
    drawing.ellipse(middle, at(36.0, 11.5), PAPER, Pen::INK);
    for (x, y) in [(-41.0, 0.0), (4.0, 14.0)] {
        drawing.ellipse(middle.by(x, y), at(2.6, 2.6), "#000", Pen::RULED);
    }
    // The jaws at the right of the rim, their beam above.
    drawing.area(
        &[at(98.0, 18.0), at(105.0, 18.0), at(105.0, 80.0), at(103.0, 80.0), at(98.0, 60.0)],
        PAPER,
        Pen::INK,
    );
    drawing.area(
        &[at(116.0, 18.0), at(124.0, 18.0), at(124.0, 60.0), at(118.0, 80.0), at(116.0, 80.0)],
        PAPER,
        Pen::INK,
    );
    drawing.rectangle(at(90.0, 12.0), at(190.0, 24.0), PAPER, Pen::INK);
    drawing.rectangle(at(112.0, 9.0), at(142.0, 27.0), PAPER, Pen::INK);
    for step in 0..6 {
        let x = 148.0 + 7.0 * f64::from(step);
        drawing.line(at(x, 12.0), at(x, 17.0), Pen::RULED);
    }
    drawing.arrow(at(132.0, 74.0), at(120.0, 74.0), Pen::RULED);
    drawing.text(at(134.0, 66.0), "measured", LABEL);
    drawing.text(at(134.0, 78.0), "_wall", LABEL);
    drawing.text(at(134.0, 98.0), "one jaw inside,", SMALL);
    drawing.text(at(134.0, 109.0), "one outside", SMALL);
    drawing.text(at(70.0, 112.0), "end post,", SMALL.middle());
    drawing.text(at(70.0, 123.0), "cap off; at", SMALL.middle());
    drawing.text(at(70.0, 134.0), "three places", SMALL.middle());
    drawing
}

/// Rust where a post meets the concrete.
pub(super) fn rust() -> Svg {
    let mut drawing = Svg::new(&About {
        id: "rust",
        title: "rust_at_grade: what rust took at the concrete",
        desc: "The post is scraped clean at the concrete and measured across with a caliper there, and again higher up \
               where it is sound. Half the difference is the wall that rust took.",
        size: at(200.0, 150.0),
    });
    let foot = 122.0;
    ground(&mut drawing, at(8.0, foot), 192.0);
    mound(&mut drawing, at(66.0, foot), 50.0);
    drawing.area(
        &[
            at(44.0, 6.0),
            at(88.0, 6.0),
            at(88.0, 88.0),
            at(86.0, 96.0),
            at(83.0, 104.0),
            at(82.0, foot - 7.0),
            at(50.0, foot - 7.0),
            at(49.0, 104.0),
            at(46.0, 97.0),
            at(44.0, 88.0),
        ],
        STEEL,
        Pen::INK,
    );
    for (x, y) in [(52.0, 98.0), (58.0, 106.0), (66.0, 100.0), (73.0, 107.0), (79.0, 99.0), (64.0, 110.0)] {
        drawing.line(at(x, y), at(x + 2.5, y + 2.0), Pen::THIN);
    }
    drawing.dimension(at(44.0, 40.0), at(88.0, 40.0), Pen::RULED);
    drawing.line(at(88.0, 40.0), at(112.0, 34.0), Pen::RULED);
    drawing.text(at(114.0, 30.0), "across, higher", SMALL);
    drawing.text(at(114.0, 41.0), "up, sound", SMALL);
    drawing.dimension(at(50.0, 111.0), at(82.0, 111.0), Pen::RULED);
    drawing.line(at(82.0, 111.0), at(112.0, 70.0), Pen::RULED);
    drawing.text(at(114.0, 60.0), "across, at the", SMALL);
    drawing.text(at(114.0, 71.0), "concrete, scraped", SMALL);
    drawing.text(at(108.0, 92.0), "rust_at_grade", LABEL);
    drawing.text(at(126.0, 104.0), "half the", SMALL);
    drawing.text(at(126.0, 115.0), "difference", SMALL);
    drawing.text(at(66.0, 146.0), "concrete", SMALL.middle());
    drawing
}

/// Steel mesh and its wire.
pub(super) fn mesh(page: usize) -> Svg {
    let mut drawing = Svg::new(&About {
        id: &format!("mesh-{page}"),
        title: "chain_link: mesh and wire",
        desc: "The mesh is the clear gap between two parallel wires, square to them. The wire is measured across, over \
               its coating.",
        size: at(190.0, 104.0),
    });
    // Wires as pairs of lines, leaning one way behind and the other way in front.
    let wire = |drawing: &mut Svg, from: At, to: At| {
        drawing.line(from, to, Pen::INK);
        drawing.line(from.by(6.0, 0.0), to.by(6.0, 0.0), Pen::INK);
    };
    for x in [8.0, 60.0, 112.0] {
        wire(&mut drawing, at(x, 98.0), at(x + 60.0, 6.0));
    }
    for x in [8.0, 60.0, 112.0] {
        wire(&mut drawing, at(x, 6.0), at(x + 60.0, 98.0));
    }
    drawing.dimension(at(99.0, 47.4), at(131.2, 68.4), Pen::RULED);
    drawing.line(at(118.0, 60.0), at(150.0, 48.0), Pen::RULED);
    drawing.rectangle(at(149.0, 39.0), at(184.0, 54.0), PAPER, Pen { width: 0.0, ..Pen::RULED });
    drawing.text(at(152.0, 50.0), "mesh", LABEL);
    drawing.arrow(at(22.0, 40.0), at(27.5, 36.5), Pen::RULED);
    drawing.arrow(at(38.0, 29.0), at(33.0, 33.0), Pen::RULED);
    drawing.rectangle(at(1.0, 42.0), at(28.0, 57.0), PAPER, Pen { width: 0.0, ..Pen::RULED });
    drawing.text(at(3.0, 53.0), "wire", LABEL);
    drawing
}

/// The concrete round the foot of a post.
pub(super) fn footing(page: usize) -> Svg {
    let mut drawing = Svg::new(&About {
        id: &format!("footing-{page}"),
        title: "footing: width and depth of the concrete",
        desc: "The width is taken across the concrete, the depth from the ground to the bottom of the concrete, not to \
               the foot of the post.",
        size: at(190.0, 120.0),
    });
    let grade = 32.0;
    drawing.line(at(6.0, grade), at(184.0, grade), Pen::INK);
    for x in [14.0, 28.0, 42.0, 152.0, 166.0, 180.0] {
        drawing.line(at(x, grade), at(x - 5.0, grade + 6.0), Pen::RULED);
    }
    drawing.rectangle(at(64.0, grade - 2.0), at(124.0, 112.0), PAPER, Pen { dash: "5 3", ..Pen::INK });
    for (x, y) in [(70.0, 50.0), (78.0, 70.0), (71.0, 92.0), (112.0, 46.0), (118.0, 66.0), (110.0, 90.0)] {
        drawing.ellipse(at(x, y), at(1.8, 1.3), PAPER, Pen::RULED);
    }
    drawing.rectangle(at(88.0, 4.0), at(100.0, grade), STEEL, Pen::INK);
    drawing.rectangle(at(88.0, grade), at(100.0, 96.0), "none", Pen { dash: "3 3", ..Pen::INK });
    drawing.dimension(at(64.0, 20.0), at(124.0, 20.0), Pen::RULED);
    drawing.line(at(64.0, 16.0), at(64.0, grade - 3.0), Pen::RULED);
    drawing.line(at(124.0, 16.0), at(124.0, grade - 3.0), Pen::RULED);
    drawing.text(at(128.0, 23.0), "width", LABEL);
    drawing.line(at(124.0, 112.0), at(150.0, 112.0), Pen::RULED);
    drawing.dimension(at(140.0, grade), at(140.0, 112.0), Pen::RULED);
    drawing.text(at(145.0, 76.0), "depth", LABEL);
    drawing
}

/// Rows of ties along cloth.
pub(super) fn ties(page: usize) -> Svg {
    let mut drawing = Svg::new(&About {
        id: &format!("ties-{page}"),
        title: "fastening: rows of ties and their spacing",
        desc: "Cloth tied along its top and bottom edge, perhaps along a middle row and its sides. The spacing is from \
               tie to tie.",
        size: at(190.0, 112.0),
    });
    let (left, right, top, foot) = (44.0, 182.0, 26.0, 100.0);
    drawing.line(at(34.0, top - 6.0), at(188.0, top - 6.0), Pen::THICK);
    drawing.rectangle(at(left, top), at(right, foot), PAPER, Pen::INK);
    let mut x = left + 6.0;
    while x < right {
        for y in [top, foot] {
            drawing.ellipse(at(x, y), at(2.4, 4.6), "none", Pen::INK);
        }
        drawing.ellipse(at(x, 62.0), at(1.8, 3.4), "none", Pen::RULED);
        x += 21.0;
    }
    for y in [45.0, 81.0] {
        drawing.ellipse(at(left, y), at(4.0, 2.2), "none", Pen::RULED);
        drawing.ellipse(at(right, y), at(4.0, 2.2), "none", Pen::RULED);
    }
    drawing.dimension(at(left + 27.0, 10.0), at(left + 48.0, 10.0), Pen::RULED);
    drawing.text(at(left + 54.0, 13.0), "spacing", LABEL);
    drawing.text(at(2.0, 13.0), "rows", LABEL);
    drawing.text(at(2.0, 30.0), "top", SMALL);
    drawing.text(at(2.0, 65.0), "middle", SMALL);
    drawing.text(at(2.0, 85.0), "sides", SMALL);
    drawing.text(at(2.0, 103.0), "bottom", SMALL);
    drawing
}
