//! Cloth held at two opposite edges only: it bows, and is pulled along its plane as well as off it.
//!
//! A strip of the cloth from edge to edge, as wide as one grommet's share, is a cable under an even load. Under a
//! shallow bow it is a parabola, and its tension T follows from the slack and the stretch together:
//! T³ + EA e₀ T² − EA w²L²/24 = 0. The wind stays square to the cloth, so that its true shape is an arc of a circle with
//! T = p R; from a sag of a tenth of the span on both are worked, and the heavier pull of the two is kept.
//!
//! The pull along the plane of the cloth goes from one edge to the other. Where cloth goes on behind an upright it is
//! balanced there; where it ends it is not.

use super::{FasteningError, above_nought, not_below_nought};
use crate::rule;
use crate::source::{Clause, Document, STATICS, Seen, Stated};
use crate::units::{Force, Length, LineLoad, Powers, Pressure, Pure, Quantity};
use crate::workings::{Blank, Entry, Ledger, Listed, OutOfRange, within};
use std::f64::consts::{FRAC_PI_2, PI};

static OVERHEAD_LINES: Document = Document {
    short: "overhead lines",
    title: "Sag, slack and stretch of an overhead line of level supports, S³W²/(24 H²) and H/EA",
    seen: Seen::SecondHand("an engineers' web page, and handbooks of civil engineering formulas"),
};

const PARABOLA: Clause = OVERHEAD_LINES.at("parabola under an even load");
const SLACK_AND_STRETCH: Clause = OVERHEAD_LINES.at("slack and stretch");
const CIRCLE: Clause = STATICS.at("arc of a circle under an even pressure");

/// The sag over the span up to which the parabola stands alone.
pub const SHALLOW: Stated<f64> = Stated {
    value: 0.1,
    because: "ours: at a sag of a tenth of the span the parabola's tension is 2 to 3 % below that of the true arc; \
              beyond it both are worked and the heavier pull is kept",
};

rule! {
    /// Load on a strip of cloth.
    StripLoad, "fastening/strip-load", STATICS.at("pressure on a strip");
    /// pressure
    pressure: Pressure = "p";
    /// width of the strip, a grommet's share of the edge
    width: Length = "b";
    load "w": LineLoad = pressure * width
}
rule! {
    /// Stiffness of a strip of cloth.
    StripStiffness, "fastening/strip-stiffness", STATICS.at("cloth side by side");
    /// stiffness of cloth of unit width
    cloth: LineLoad = "EA'";
    /// width of the strip
    width: Length = "b";
    stiffness "EA": Force = cloth * width
}
rule! {
    /// Slack of cloth that is longer than the span it hangs in; below 0 where it was pulled to it.
    SlackOfLength, "fastening/slack-of-length", SLACK_AND_STRETCH;
    /// length of the cloth, laid flat
    cloth: Length = "L_0";
    /// from edge to edge
    span: Length = "L";
    slack "e_0": f64 as Coefficient = ((cloth - span) / span).pure()
}
rule! {
    /// Slack of cloth that was hung with a tension.
    SlackOfPretension, "fastening/slack-of-pretension", SLACK_AND_STRETCH;
    /// tension for each width with which it was hung
    pretension: LineLoad = "N_0";
    /// stiffness of cloth of unit width
    cloth: LineLoad = "EA'";
    slack "e_0": f64 as Coefficient = -(pretension / cloth).pure()
}
rule! {
    /// Slack of cloth from how far it can be drawn out at the middle of its span without stretching.
    SlackOfSag, "fastening/slack-of-sag", PARABOLA;
    /// how far it is drawn out
    sag: Length = "s_0";
    /// from edge to edge
    span: Length = "L";
    slack "e_0": f64 as Coefficient = 8.0 / 3.0 * (sag / span).pure().squared()
}
rule! {
    /// How far a cable or strip of a given slack sags, without stretching.
    SagOfSlack, "fastening/sag-of-slack", PARABOLA;
    /// slack, as a share of the span
    slack: f64 as Coefficient = "e_0";
    /// span
    span: Length = "L";
    sag "s_0": Length = span * (3.0 * slack / 8.0).sqrt()
}
rule! {
    /// Tension at the middle of a taut cable that gives: the cubic without slack.
    TautTension, "fastening/taut-tension", SLACK_AND_STRETCH;
    /// load
    load: LineLoad = "w";
    /// span
    span: Length = "L";
    /// stiffness
    stiffness: Force = "EA";
    tension "T": Force = stiffness * ((load * span / stiffness).pure().squared() / 24.0).powf(1.0 / 3.0)
}
rule! {
    /// Tension at the middle of a slack cable that does not give: the cubic without stretch.
    StiffTension, "fastening/stiff-tension", SLACK_AND_STRETCH;
    /// load
    load: LineLoad = "w";
    /// span
    span: Length = "L";
    /// slack, as a share of the span
    slack: f64 as Coefficient = "e_0";
    tension "T": Force = load * span / (24.0 * slack).sqrt()
}
rule! {
    /// One round of Newton's method towards T³ + EA e₀ T² − EA w²L²/24 = 0.
    CableRound, "fastening/cable-round", SLACK_AND_STRETCH;
    /// load
    load: LineLoad = "w";
    /// span
    span: Length = "L";
    /// stiffness
    stiffness: Force = "EA";
    /// slack, as a share of the span; below 0 for a pretension
    slack: f64 as Coefficient = "e_0";
    /// the round before
    guess: Force = "T_0";
    tension "T": Force = guess
        - (guess.cubed() + slack * stiffness * guess.squared() - stiffness * (load * span).squared() / 24.0)
            / (3.0 * guess.squared() + 2.0 * slack * stiffness * guess)
}
rule! {
    /// Tension at the middle of a cable of some slack and stretch: T³ + EA e₀ T² − EA w²L²/24 = 0.
    ///
    /// # Range
    /// A load and a stiffness above 0, slack above −1. To a sag of about a tenth of the span.
    ///
    /// # Checked by
    /// `reference-cases/fastening/scipy-1-17-1-cubic.toml` and the overhead lines beside it
    CableTension, "fastening/cable-tension", SLACK_AND_STRETCH;
    /// load
    load: LineLoad = "w";
    /// span
    span: Length = "L";
    /// stiffness
    stiffness: Force = "EA";
    /// slack, as a share of the span; below 0 for a pretension
    slack: f64 as Coefficient = "e_0";
    tension "T": Force
}
impl CableTension {
    /// Finds the one root above 0.
    ///
    /// The start lies at or above it, where the cubic is hollow upwards, so that each round falls towards it.
    ///
    /// # Errors
    /// If the load, span or stiffness is not above 0, or the slack not above −1.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Force, OutOfRange> {
        let Self { load, span, stiffness, slack } = self;
        within(
            "load",
            SLACK_AND_STRETCH,
            load,
            LineLoad::from_si(f64::MIN_POSITIVE),
            LineLoad::from_si(f64::MAX),
        )?;
        within(
            "span",
            SLACK_AND_STRETCH,
            span,
            Length::from_si(f64::MIN_POSITIVE),
            Length::from_si(f64::MAX),
        )?;
        let (least, greatest) = (Force::from_si(f64::MIN_POSITIVE), Force::from_si(f64::MAX));
        within("stiffness", SLACK_AND_STRETCH, stiffness, least, greatest)?;
        within("slack", SLACK_AND_STRETCH, slack, -1.0 + f64::EPSILON, f64::MAX)?;
        let taut = TautTension { load, span, stiffness }.work(&mut Blank);
        let mut guess = if slack > 0.0 {
            let stiff = StiffTension { load, span, slack }.work(&mut Blank);
            if stiff < taut { stiff } else { taut }
        } else {
            taut - slack * stiffness
        };
        let mut rounds = 0;
        while rounds < 100 {
            let next = CableRound { load, span, stiffness, slack, guess }.work(&mut Blank);
            rounds += 1;
            let done = (next - guess).si().abs() <= 1e-15 * guess.si();
            guess = next;
            if done {
                break;
            }
        }
        // As a share of T³ + EA |e₀| T², in units of EA: x³ + e₀ x² − q²/24.
        let (x, q) = ((guess / stiffness).pure(), (load * span / stiffness).pure());
        let left = x.cubed() + slack * x.squared() - q.squared() / 24.0;
        let residual = left.abs() / (x.cubed() + slack.abs() * x.squared());
        ledger.write(|| Entry::Solved {
            symbol: "T",
            method: "T³ + EA e₀ T² − EA w²L²/24 = 0 by Newton's method from above its root",
            rounds,
            residual,
        });
        Ok(self.keep(ledger, guess))
    }
}
rule! {
    /// Tension at the middle of a cable of a given sag.
    TensionOfSag, "fastening/tension-of-sag", PARABOLA;
    /// load
    load: LineLoad = "w";
    /// span
    span: Length = "L";
    /// sag at the middle
    sag: Length = "s";
    tension "T": Force = load * span.squared() / (8.0 * sag)
}
rule! {
    /// Sag at the middle of a cable of a given tension.
    SagOfTension, "fastening/sag-of-tension", PARABOLA;
    /// load
    load: LineLoad = "w";
    /// span
    span: Length = "L";
    /// tension at the middle
    tension: Force = "T";
    sag "s": Length = load * span.squared() / (8.0 * tension)
}
rule! {
    /// Force of a cable at its edge: its tension at the middle and half its load.
    EdgeForce, "fastening/edge-force", PARABOLA;
    /// load
    load: LineLoad = "w";
    /// span
    span: Length = "L";
    /// tension at the middle
    tension: Force = "T";
    edge "N": Force = (tension.squared() + (load * span / 2.0).squared()).sqrt()
}
rule! {
    /// Force at the edge of a cable of a given sag.
    EdgeForceOfSag, "fastening/edge-force-of-sag", PARABOLA;
    /// load
    load: LineLoad = "w";
    /// span
    span: Length = "L";
    /// sag at the middle
    sag: Length = "s";
    edge "N": Force
}
impl EdgeForceOfSag {
    /// Works the tension at the middle, then the force at the edge.
    ///
    /// # Errors
    /// If the sag is not above 0.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Force, OutOfRange> {
        let Self { load, span, sag } = self;
        within("sag", PARABOLA, sag, Length::from_si(f64::MIN_POSITIVE), Length::from_si(f64::MAX))?;
        let tension = TensionOfSag { load, span, sag }.work(ledger);
        let edge = EdgeForce { load, span, tension }.work(ledger);
        Ok(self.keep(ledger, edge))
    }
}
rule! {
    /// Length of a cable along its parabola, in closed form.
    ///
    /// # Departure
    /// Handbooks print the first two or three terms of its series, 1 + 8/3 (s/L)² − 32/5 (s/L)⁴; two terms are 3 % too
    /// long at a sag of three tenths of the span.
    ///
    /// # Range
    /// A sag above 0.
    CableLength, "fastening/cable-length", PARABOLA;
    /// span
    span: Length = "L";
    /// sag at the middle
    sag: Length = "s";
    length "L_s": Length as Distance = 0.5 * span
        * ((1.0 + 16.0 * (sag / span).pure().squared()).sqrt()
            + (4.0 * (sag / span).pure() + (1.0 + 16.0 * (sag / span).pure().squared()).sqrt()).ln()
                / (4.0 * (sag / span).pure()))
}
rule! {
    /// A force of a strip for each width of it.
    PerWidth, "fastening/per-width", STATICS.at("strips side by side");
    /// force of the strip
    force: Force = "N";
    /// width of the strip
    width: Length = "b";
    per_width "N'": LineLoad = force / width
}
rule! {
    /// Pull of cloth on an upright edge in the plane of the cloth.
    InPlanePull, "fastening/in-plane-pull", STATICS.at("strips one above the other");
    /// pull in the plane for each width of strip
    per_width: LineLoad = "T'";
    /// height of the edge
    height: Length = "h";
    pull "H": Force = per_width * height
}
rule! {
    /// Tension of a strip on which no pressure acts, from the pretension it was hung with.
    RestTension, "fastening/rest-tension", SLACK_AND_STRETCH;
    /// stiffness
    stiffness: Force = "EA";
    /// slack, below 0 for a pretension
    slack: f64 as Coefficient = "e_0";
    tension "T": Force = -slack * stiffness
}
rule! {
    /// Slack at which a strip hangs as half a circle between its edges; with more it is no longer drawn taut.
    HalfCircleSlack, "fastening/half-circle-slack", CIRCLE;
    /// load
    load: LineLoad = "w";
    /// span
    span: Length = "L";
    /// stiffness
    stiffness: Force = "EA";
    slack "e_0": f64 as Coefficient = PI / (2.0 * (1.0 + (load * span / (2.0 * stiffness)).pure())) - 1.0
}
rule! {
    /// One round of Newton's method towards θ − (1 + e₀)(sin θ + w L/(2 EA)) = 0.
    ArcRound, "fastening/arc-round", CIRCLE;
    /// load
    load: LineLoad = "w";
    /// span
    span: Length = "L";
    /// stiffness
    stiffness: Force = "EA";
    /// slack, as a share of the span; below 0 for a pretension
    slack: f64 as Coefficient = "e_0";
    /// the round before
    guess: f64 as Angle = "θ_0";
    angle "θ": f64 as Angle = guess
        - (guess - (1.0 + slack) * (guess.sin() + (load * span / (2.0 * stiffness)).pure()))
            / (1.0 - (1.0 + slack) * guess.cos())
}
rule! {
    /// Half the angle at the centre of the arc that a strip takes under an even pressure.
    ///
    /// The arc is as long as the cloth and its stretch: θ/sin θ = (1 + e₀)(1 + T/EA) with T = w L/(2 sin θ).
    ///
    /// # Range
    /// Cloth that hangs as no more than half a circle.
    ///
    /// # Checked by
    /// `reference-cases/fastening/scipy-1-17-1-arc.toml`
    ArcAngle, "fastening/arc-angle", CIRCLE;
    /// load
    load: LineLoad = "w";
    /// span
    span: Length = "L";
    /// stiffness
    stiffness: Force = "EA";
    /// slack, as a share of the span; below 0 for a pretension
    slack: f64 as Coefficient = "e_0";
    angle "θ": f64 as Angle
}
impl ArcAngle {
    /// Finds the one root of θ − (1 + e₀)(sin θ + w L/(2 EA)) up to a right angle.
    ///
    /// The left side is below 0 at 0 and hollow upwards: from a right angle each round falls towards the root.
    ///
    /// # Errors
    /// If the load, span or stiffness is not above 0, the slack not above −1, or so large that the cloth hangs as more
    /// than half a circle.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        let Self { load, span, stiffness, slack } = self;
        within("load", CIRCLE, load, LineLoad::from_si(f64::MIN_POSITIVE), LineLoad::from_si(f64::MAX))?;
        within("span", CIRCLE, span, Length::from_si(f64::MIN_POSITIVE), Length::from_si(f64::MAX))?;
        let (least, greatest) = (Force::from_si(f64::MIN_POSITIVE), Force::from_si(f64::MAX));
        within("stiffness", CIRCLE, stiffness, least, greatest)?;
        let greatest = HalfCircleSlack { load, span, stiffness }.work(&mut Blank);
        within("slack", CIRCLE, slack, -1.0 + f64::EPSILON, greatest)?;
        let mut angle = FRAC_PI_2;
        let mut rounds = 0;
        while rounds < 100 {
            let next = ArcRound { load, span, stiffness, slack, guess: angle }.work(&mut Blank);
            rounds += 1;
            // Close to the root the rounds stop falling: what is left is rounding.
            if !(next > 0.0 && next < angle) {
                break;
            }
            angle = next;
        }
        // The step a further round would take, times the slope, is what is left of the equation.
        let step = angle - ArcRound { load, span, stiffness, slack, guess: angle }.work(&mut Blank);
        let residual = (step * (1.0 - (1.0 + slack) * angle.cos()) / angle).abs();
        ledger.write(|| Entry::Solved {
            symbol: "θ",
            method: "θ − (1 + e₀)(sin θ + w L/(2 EA)) = 0 by Newton's method from a right angle",
            rounds,
            residual,
        });
        Ok(self.keep(ledger, angle))
    }
}
rule! {
    /// Radius of an arc over its chord.
    ArcRadius, "fastening/arc-radius", CIRCLE;
    /// span, the chord
    span: Length = "L";
    /// half the angle at the centre
    angle: f64 as Angle = "θ";
    radius "R": Length as Distance = span / (2.0 * angle.sin())
}
rule! {
    /// Tension of an arc, the same all along it.
    ArcTension, "fastening/arc-tension", CIRCLE;
    /// load
    load: LineLoad = "w";
    /// radius
    radius: Length as Distance = "R";
    tension "T": Force = load * radius
}
rule! {
    /// Sag of an arc.
    ArcSag, "fastening/arc-sag", CIRCLE;
    /// radius
    radius: Length as Distance = "R";
    /// half the angle at the centre
    angle: f64 as Angle = "θ";
    sag "s": Length = radius * (1.0 - angle.cos())
}
rule! {
    /// Pull of an arc at its edge in the plane of its two edges.
    ArcInPlane, "fastening/arc-in-plane", CIRCLE;
    /// tension
    tension: Force = "T";
    /// half the angle at the centre
    angle: f64 as Angle = "θ";
    pull "H": Force = tension * angle.cos()
}
rule! {
    /// Tension of the arc that a strip takes under an even pressure.
    ///
    /// # Range
    /// Cloth that hangs as no more than half a circle.
    ///
    /// # Checked by
    /// `reference-cases/fastening/scipy-1-17-1-arc.toml`
    ExactArc, "fastening/exact-arc", CIRCLE;
    /// load
    load: LineLoad = "w";
    /// span
    span: Length = "L";
    /// stiffness
    stiffness: Force = "EA";
    /// slack, as a share of the span; below 0 for a pretension
    slack: f64 as Coefficient = "e_0";
    tension "T": Force
}
impl ExactArc {
    /// Works the angle, the radius, the tension, the sag and the pull in the plane of the edges.
    ///
    /// # Errors
    /// As for [`ArcAngle::work`].
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Force, OutOfRange> {
        let arc = self.shape(ledger)?;
        Ok(self.keep(ledger, arc.tension))
    }

    fn shape(self, ledger: &mut impl Ledger) -> Result<Arc, OutOfRange> {
        let Self { load, span, stiffness, slack } = self;
        let angle = ArcAngle { load, span, stiffness, slack }.work(ledger)?;
        let radius = ArcRadius { span, angle }.work(ledger);
        let tension = ArcTension { load, radius }.work(ledger);
        let sag = ArcSag { radius, angle }.work(ledger);
        let in_plane = ArcInPlane { tension, angle }.work(ledger);
        Ok(Arc { angle, radius, tension, sag, in_plane })
    }
}

/// The rules of this module by name.
pub const RULES: &[Listed] = &[
    Listed::of::<StripLoad>(),
    Listed::of::<StripStiffness>(),
    Listed::of::<SlackOfLength>(),
    Listed::of::<SlackOfPretension>(),
    Listed::of::<SlackOfSag>(),
    Listed::of::<SagOfSlack>(),
    Listed::of::<TautTension>(),
    Listed::of::<StiffTension>(),
    Listed::of::<CableRound>(),
    Listed::of::<CableTension>(),
    Listed::of::<TensionOfSag>(),
    Listed::of::<SagOfTension>(),
    Listed::of::<EdgeForce>(),
    Listed::of::<EdgeForceOfSag>(),
    Listed::of::<CableLength>(),
    Listed::of::<PerWidth>(),
    Listed::of::<InPlanePull>(),
    Listed::of::<RestTension>(),
    Listed::of::<HalfCircleSlack>(),
    Listed::of::<ArcRound>(),
    Listed::of::<ArcAngle>(),
    Listed::of::<ArcRadius>(),
    Listed::of::<ArcTension>(),
    Listed::of::<ArcSag>(),
    Listed::of::<ArcInPlane>(),
    Listed::of::<ExactArc>(),
];

/// A strip of cloth held at its two ends, as wide as one grommet's share of the edge.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Strip {
    /// The pressure square to it.
    pub pressure: Pressure,
    /// From edge to edge.
    pub span: Length,
    /// Stiffness of cloth of unit width: force for each width over stretch.
    pub stiffness: LineLoad,
    /// By how much the cloth is longer than the span, as a share of it; below 0 if it was hung with a tension.
    pub slack: f64,
    /// Its width: from grommet to grommet.
    pub width: Length,
}

/// The parabola of a strip.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Parabola {
    /// Tension at the middle, and its pull in the plane of the edges.
    pub tension: Force,
    /// Sag at the middle.
    pub sag: Length,
    /// Force at the edge.
    pub edge: Force,
    /// Length of the cloth along it.
    pub length: Length,
}

/// The arc of a strip.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Arc {
    /// Half the angle at the centre.
    pub angle: f64,
    /// Its radius.
    pub radius: Length,
    /// Tension, the same all along it and at its edge.
    pub tension: Force,
    /// Sag at the middle.
    pub sag: Length,
    /// The part of the tension in the plane of the edges.
    pub in_plane: Force,
}

/// What a strip asks of its two edges.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Held {
    /// The parabola.
    pub parabola: Parabola,
    /// The arc, where the bow is deeper than a tenth of the span.
    pub arc: Option<Arc>,
    /// Force on the grommet of the strip, the heavier of the two.
    pub edge: Force,
    /// The same for each width.
    pub edge_per_width: LineLoad,
    /// Pull in the plane of the cloth for each width, the heavier of the two.
    pub in_plane_per_width: LineLoad,
}

impl Held {
    /// The pull in the plane of the cloth on an upright edge of some height; where cloth goes on behind that upright,
    /// its own pull is against it.
    ///
    /// # Errors
    /// If the height is below 0.
    pub fn in_plane(&self, height: Length, ledger: &mut impl Ledger) -> Result<Force, FasteningError> {
        let height = not_below_nought("the height of the edge", height)?;
        Ok(InPlanePull { per_width: self.in_plane_per_width, height }.work(ledger))
    }
}

impl Strip {
    /// The tension of the strip and what it asks of its edges.
    ///
    /// # Range
    /// Cloth that hangs as no more than half a circle.
    ///
    /// # Errors
    /// If a size or the stiffness is not above 0, the pressure below 0, or the cloth so slack that it never goes taut.
    pub fn held(self, ledger: &mut impl Ledger) -> Result<Held, FasteningError> {
        let Self { pressure, span, stiffness, slack, width } = self;
        above_nought("the span", span)?;
        above_nought("the stiffness of the cloth", stiffness)?;
        above_nought("the width of the strip", width)?;
        not_below_nought("the pressure", pressure)?;
        let stiffness = StripStiffness { cloth: stiffness, width }.work(ledger);
        if pressure.si() == 0.0 {
            return self.at_rest(stiffness, ledger);
        }
        let load = StripLoad { pressure, width }.work(ledger);
        let greatest = HalfCircleSlack { load, span, stiffness }.work(&mut Blank);
        if slack > greatest {
            return Err(FasteningError::NeverTaut { slack, greatest: Some(greatest) });
        }
        let tension = CableTension { load, span, stiffness, slack }.work(ledger)?;
        let sag = SagOfTension { load, span, tension }.work(ledger);
        let edge = EdgeForce { load, span, tension }.work(ledger);
        let length = CableLength { span, sag }.work(ledger);
        let parabola = Parabola { tension, sag, edge, length };
        let shallow = ledger.judge("s/L", SHALLOW);
        let arc = if (sag / span).pure() > shallow {
            Some(ExactArc { load, span, stiffness, slack }.shape(ledger)?)
        } else {
            None
        };
        let heavier = |one: Force, other: Force| if other > one { other } else { one };
        let edge = arc.map_or(edge, |arc| heavier(edge, arc.tension));
        let in_plane = arc.map_or(tension, |arc| heavier(tension, arc.in_plane));
        Ok(self.asked(parabola, arc, edge, in_plane, ledger))
    }

    /// Without a pressure only cloth that was hung with a tension has one.
    fn at_rest(self, stiffness: Force, ledger: &mut impl Ledger) -> Result<Held, FasteningError> {
        if self.slack >= 0.0 || self.slack.is_nan() {
            return Err(FasteningError::NeverTaut { slack: self.slack, greatest: None });
        }
        let tension = RestTension { stiffness, slack: self.slack }.work(ledger);
        let nought = Length::from_si(0.0);
        let parabola = Parabola { tension, sag: nought, edge: tension, length: self.span };
        Ok(self.asked(parabola, None, tension, tension, ledger))
    }

    fn asked(
        self,
        parabola: Parabola,
        arc: Option<Arc>,
        edge: Force,
        in_plane: Force,
        ledger: &mut impl Ledger,
    ) -> Held {
        let width = self.width;
        let edge_per_width = PerWidth { force: edge, width }.work(ledger);
        let in_plane_per_width = PerWidth { force: in_plane, width }.work(ledger);
        Held { parabola, arc, edge, edge_per_width, in_plane_per_width }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{
        feet, inches, metres, newtons, newtons_per_metre, pascals, pounds, pounds_per_foot, psf,
    };
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    /// 10 psf on 10 ft between upright edges, EA 5,000 lb/ft, grommets 12 in apart.
    fn court(slack: f64) -> Strip {
        Strip {
            pressure: psf(10.0),
            span: feet(10.0),
            stiffness: pounds_per_foot(5000.0),
            slack,
            width: inches(12.0),
        }
    }

    fn per_foot(load: LineLoad) -> f64 {
        (load / pounds_per_foot(1.0)).pure()
    }

    fn held(strip: Strip) -> Held {
        strip.held(&mut Blank).unwrap()
    }

    #[test]
    fn ten_feet_of_cloth_with_a_hundredth_of_slack_pull_124_pounds_a_grommet_and_1130_on_an_end_post() {
        let found = held(court(0.01));
        assert!((per_foot(found.in_plane_per_width) - 113.0).abs() < 0.05);
        assert!((per_foot(found.edge_per_width) - 123.6).abs() < 0.05);
        assert_eq!((found.edge / pounds(1.0)).pure().round(), 124.0);
        let post = (found.in_plane(feet(10.0), &mut Blank).unwrap() / pounds(1.0)).pure();
        assert!((post - 1130.0).abs() < 0.5, "{post}");
    }

    #[test]
    fn taut_cloth_pulls_harder_and_two_spacings_share_one_tension() {
        let found = held(court(0.0));
        assert!((per_foot(found.in_plane_per_width) - 127.718).abs() < 5e-4);
        assert!((per_foot(found.edge_per_width) - 137.157).abs() < 5e-4);
        let wide = held(Strip { width: inches(18.0), ..court(0.0) });
        assert_relative_eq!(
            per_foot(wide.edge_per_width),
            per_foot(found.edge_per_width),
            max_relative = 1e-12
        );
        assert_relative_eq!((wide.edge / found.edge).pure(), 1.5, max_relative = 1e-12);
    }

    #[test]
    fn the_arc_stands_beside_the_parabola_from_a_sag_of_a_tenth_on() {
        let shallow = held(court(0.0));
        assert!(shallow.arc.is_none());
        assert_relative_eq!((shallow.parabola.sag / feet(0.978717)).pure(), 1.0, max_relative = 1e-6);
        let deep = held(court(0.01));
        let arc = deep.arc.unwrap();
        assert_relative_eq!((arc.tension / pounds(116.53735)).pure(), 1.0, max_relative = 1e-7);
        assert_relative_eq!((arc.sag / feet(1.1271240)).pure(), 1.0, max_relative = 1e-6);
        // Statics of the arc: what it pulls square to the plane of its edges is half the load.
        assert_relative_eq!((arc.tension / pounds(50.0)).pure() * arc.angle.sin(), 1.0, max_relative = 1e-12);
        assert!(arc.tension < deep.parabola.edge && arc.in_plane < deep.parabola.tension);
    }

    /// Hooke's law on the arc: its pull is half of the load over the sine, its length the chord's θ/sin θ.
    #[test]
    fn cloth_in_an_arc_is_as_long_as_its_pull_stretches_it_hung_taut_or_slack() {
        let asked = |slack| {
            ArcAngle { load: pounds_per_foot(10.0), span: feet(10.0), stiffness: pounds(5000.0), slack }
                .work(&mut Blank)
        };
        for slack in [-0.01, -0.001, 0.0, 0.03, 0.5] {
            let angle = asked(slack).unwrap();
            let stretch = angle / angle.sin() / (1.0 + slack) - 1.0;
            assert_relative_eq!(stretch, 50.0 / angle.sin() / 5000.0, max_relative = 1e-9);
            let (load, span, stiffness) = (pounds_per_foot(10.0), feet(10.0), pounds(5000.0));
            let pull = ExactArc { load, span, stiffness, slack }.work(&mut Blank).unwrap();
            assert_relative_eq!((pull / pounds(50.0)).pure() * angle.sin(), 1.0, max_relative = 1e-9);
        }
        // Cloth that had no length, and cloth as long as 10 ft · π/2 and more.
        assert!(asked(-1.0).is_err() && asked(0.58).is_err());
    }

    #[test]
    fn cloth_that_hangs_as_half_a_circle_is_still_held_and_pulls_straight_out_and_slacker_cloth_never_goes_taut()
     {
        let (span, width) = (metres(3.0), metres(1.0));
        let whole = HalfCircleSlack { load: newtons_per_metre(500.0), span, stiffness: newtons(1e5) };
        let slack = whole.work(&mut Blank);
        let strip = Strip { pressure: pascals(500.0), span, stiffness: newtons_per_metre(1e5), slack, width };
        let arc = held(strip).arc.unwrap();
        assert_relative_eq!(arc.tension.si(), 750.0, max_relative = 1e-9);
        assert!(arc.in_plane.si().abs() < 1e-3);
        let slacker = Strip { slack: slack + 1e-9, ..strip }.held(&mut Blank);
        assert!(matches!(slacker, Err(FasteningError::NeverTaut { .. })));
    }

    /// 05: the same strips by another program, cubic and arc; SI in newtons and metres.
    #[test]
    fn the_four_strips_worked_elsewhere() {
        for (p, span, stiffness, slack, cubic, sag, edge, arc, arc_sag) in [
            (500.0, 3.0, 1e5, 0.0, 2108.58, 0.266767, 2237.99, 2149.35, 0.270199),
            (500.0, 3.0, 1e5, 0.03, 1451.26, 0.387595, 1633.6, 1521.8, 0.395297),
            (500.0, 3.0, 1e7, 0.02, 2153.5, 0.261203, 2280.37, 2211.97, 0.26206),
        ] {
            let strip = Strip {
                pressure: pascals(p),
                span: metres(span),
                stiffness: newtons_per_metre(stiffness),
                slack,
                width: metres(1.0),
            };
            let Parabola { tension, sag: ours, edge: at_edge, .. } = held(strip).parabola;
            assert_relative_eq!(tension.si(), cubic, max_relative = 5e-6);
            assert_relative_eq!(ours.si(), sag, max_relative = 5e-6);
            assert_relative_eq!(at_edge.si(), edge, max_relative = 5e-6);
            let load = newtons_per_metre(p);
            let shape = ExactArc { load, span: metres(span), stiffness: Force::from_si(stiffness), slack };
            let shape = shape.shape(&mut Blank).unwrap();
            assert_relative_eq!(shape.tension.si(), arc, max_relative = 5e-6);
            assert_relative_eq!(shape.sag.si(), arc_sag, max_relative = 2e-5);
        }
    }

    #[test]
    fn one_entry_an_equation_tells_how_it_was_solved_and_that_nothing_of_it_is_left() {
        for (slack, symbols) in [(-0.01, &["T"][..]), (0.0, &["T"]), (0.01, &["T", "θ"]), (0.1, &["T", "θ"])]
        {
            let mut ledger = Vec::new();
            let _ = court(slack).held(&mut ledger).unwrap();
            let solved: Vec<_> = ledger
                .iter()
                .filter_map(|entry| match entry {
                    Entry::Solved { symbol, method, rounds, residual } => {
                        Some((*symbol, *method, *rounds, *residual))
                    }
                    _ => None,
                })
                .collect();
            assert!(solved.iter().map(|(symbol, ..)| symbol).eq(symbols), "{slack}: {solved:?}");
            for (_, method, rounds, residual) in solved {
                assert!(method.contains("Newton"));
                assert!((1..20).contains(&rounds) && residual < 1e-14, "{slack}: {rounds} {residual}");
            }
        }
    }

    #[test]
    fn slack_that_never_goes_taut_is_an_error_with_its_data() {
        let error = court(0.6).held(&mut Blank).unwrap_err();
        let FasteningError::NeverTaut { slack, greatest: Some(greatest) } = error else { panic!("{error}") };
        // Half a circle is π/2 of its chord, less the stretch of 50 lb in 5000.
        assert_relative_eq!(greatest, FRAC_PI_2 / 1.01 - 1.0, max_relative = 1e-12);
        assert_eq!(slack, 0.6);
        assert!(error.to_string().contains("60 % of slack never goes taut under this pressure"), "{error}");
        assert!(court(greatest * (1.0 - 1e-9)).held(&mut Blank).is_ok());
        let calm = Strip { pressure: psf(0.0), ..court(0.01) };
        let error = calm.held(&mut Blank).unwrap_err();
        assert_eq!(error, FasteningError::NeverTaut { slack: 0.01, greatest: None });
        assert!(error.to_string().contains("never goes taut"), "{error}");
    }

    #[test]
    fn beyond_half_a_circle_the_rule_itself_names_its_limit() {
        let load = pounds_per_foot(10.0);
        let rule = ArcAngle { load, span: feet(10.0), stiffness: pounds(5000.0), slack: 0.6 };
        let error = rule.work(&mut Blank).unwrap_err();
        assert_eq!(error.what, "slack");
        assert!(error.to_string().contains("arc of a circle"), "{error}");
    }

    #[test]
    fn sizes_that_are_none_are_refused() {
        let base = court(0.01);
        for strip in [
            Strip { span: feet(0.0), ..base },
            Strip { width: feet(-1.0), ..base },
            Strip { stiffness: pounds_per_foot(0.0), ..base },
            Strip { pressure: psf(-1.0), ..base },
            Strip { pressure: psf(f64::NAN), ..base },
            Strip { slack: -1.0, ..base },
            Strip { slack: f64::NAN, ..base },
        ] {
            assert!(strip.held(&mut Blank).is_err(), "{strip:?}");
        }
    }

    #[test]
    fn a_pretension_stays_when_the_wind_is_gone() {
        let slack = SlackOfPretension { pretension: pounds_per_foot(20.0), cloth: pounds_per_foot(5000.0) }
            .work(&mut Blank);
        let calm = held(Strip { pressure: psf(0.0), ..court(slack) });
        assert_relative_eq!(per_foot(calm.in_plane_per_width), 20.0, max_relative = 1e-12);
        let breath = held(Strip { pressure: psf(1e-6), ..court(slack) });
        assert_relative_eq!(per_foot(breath.in_plane_per_width), 20.0, max_relative = 1e-9);
    }

    #[test]
    fn the_slack_of_a_sag_and_the_sag_of_a_slack_are_each_others_way_back() {
        let slack = SlackOfSag { sag: inches(6.0), span: feet(10.0) }.work(&mut Blank);
        assert_relative_eq!(slack, 8.0 / 3.0 * 0.05 * 0.05, max_relative = 1e-12);
        let sag = SagOfSlack { slack, span: feet(10.0) }.work(&mut Blank);
        assert_relative_eq!((sag / inches(6.0)).pure(), 1.0, max_relative = 1e-12);
        let length = SlackOfLength { cloth: feet(10.1), span: feet(10.0) }.work(&mut Blank);
        assert_relative_eq!(length, 0.01, max_relative = 1e-12);
    }

    #[test]
    fn half_a_circle_is_met_exactly() {
        let stiff = pounds(1e12);
        let rule = ExactArc {
            load: pounds_per_foot(10.0),
            span: feet(10.0),
            stiffness: stiff,
            slack: FRAC_PI_2 - 1.0 - 1e-9,
        };
        let arc = rule.shape(&mut Blank).unwrap();
        assert_relative_eq!((arc.tension / pounds(50.0)).pure(), 1.0, max_relative = 1e-6);
        assert!((arc.sag / feet(5.0)).pure() > 0.9999);
    }

    fn tension(load: f64, span: f64, stiffness: f64, slack: f64) -> f64 {
        let rule = CableTension {
            load: newtons_per_metre(load),
            span: metres(span),
            stiffness: Force::from_si(stiffness),
            slack,
        };
        rule.work(&mut Blank).unwrap().si()
    }

    /// The root by halving, in units of the stiffness.
    fn by_halving(load: f64, span: f64, stiffness: f64, slack: f64) -> f64 {
        let q = load * span / stiffness;
        let left = |x: f64| x * x * (x + slack) - q * q / 24.0;
        let (mut low, mut high) = ((-slack).max(0.0), (-slack).max(0.0) + (q * q / 24.0).cbrt() * 2.0);
        for _ in 0..200 {
            let middle = 0.5 * (low + high);
            if left(middle) > 0.0 { high = middle } else { low = middle }
        }
        0.5 * (low + high) * stiffness
    }

    proptest! {
        #[test]
        fn the_closed_length_meets_its_series_and_stands_above_its_chords(span in 1.0..100.0_f64, share in 0.001..0.1_f64) {
            let ours = CableLength { span: metres(span), sag: metres(share * span) }.work(&mut Blank).si();
            let series = span * (1.0 + 8.0 / 3.0 * share.powi(2) - 32.0 / 5.0 * share.powi(4));
            // The next term is 256/7 (s/L)⁶.
            prop_assert!((ours / series - 1.0).abs() < 40.0 * share.powi(6) + 1e-12, "{} {}", ours, series);
            prop_assert!(ours >= 2.0 * (0.5 * span).hypot(share * span));
        }

        #[test]
        fn newton_finds_the_root_that_halving_finds(
            load in 1.0..5000.0_f64, span in 0.5..20.0_f64, power in 3.0..9.0_f64, slack in -0.01..0.3_f64
        ) {
            let stiffness = 10_f64.powf(power);
            let (ours, halved) = (tension(load, span, stiffness, slack), by_halving(load, span, stiffness, slack));
            prop_assert!((ours / halved - 1.0).abs() < 1e-9, "{} {}", ours, halved);
        }

        #[test]
        fn taut_cloth_meets_its_closed_form_and_stiff_cloth_its_own(
            load in 1.0..5000.0_f64, span in 0.5..20.0_f64, power in 3.0..8.0_f64, slack in 0.001..0.3_f64
        ) {
            let stiffness = 10_f64.powf(power);
            let closed = (stiffness * (load * span).powi(2) / 24.0).cbrt();
            prop_assert!((tension(load, span, stiffness, 0.0) / closed - 1.0).abs() < 1e-12);
            // 1e15: no stretch to speak of.
            let stiff = load * span / (24.0 * slack).sqrt();
            prop_assert!((tension(load, span, 1e15, slack) / stiff - 1.0).abs() < 1e-6);
        }

        #[test]
        fn more_load_stiffer_cloth_and_less_slack_never_pull_less(
            pressure in 1.0..60.0_f64, span in 4.0..12.0_f64, power in 2.5..5.0_f64, slack in -0.005..0.1_f64, more in 1.001..1.5_f64
        ) {
            let base = Strip {
                pressure: psf(pressure),
                span: feet(span),
                stiffness: pounds_per_foot(10_f64.powf(power)),
                slack,
                width: inches(12.0),
            };
            prop_assume!(base.held(&mut Blank).is_ok());
            let here = held(base);
            for other in [
                Strip { pressure: base.pressure * more, ..base },
                Strip { stiffness: base.stiffness * more, ..base },
                Strip { slack: slack - 0.001, ..base },
            ] {
                let Ok(there) = other.held(&mut Blank) else { continue };
                prop_assert!(there.edge.si() >= here.edge.si() * (1.0 - 1e-9), "{:?}", other);
                prop_assert!(there.in_plane_per_width.si() >= here.in_plane_per_width.si() * (1.0 - 1e-9), "{:?}", other);
            }
        }

        #[test]
        fn the_arc_is_as_long_as_the_cloth_and_its_stretch(
            load in 1.0..3000.0_f64, span in 0.5..10.0_f64, power in 4.5..9.0_f64, slack in -0.005..0.5_f64
        ) {
            let stiffness = 10_f64.powf(power);
            let rule = ExactArc { load: newtons_per_metre(load), span: metres(span), stiffness: Force::from_si(stiffness), slack };
            let Ok(arc) = rule.shape(&mut Blank) else { return Ok(()) };
            // Its length by its two ends and the height of the bow: a sum of 20,000 chords.
            let pieces = 20_000_u32;
            let half = arc.angle;
            let point = |k: u32| {
                let at = half * (2.0 * f64::from(k) / f64::from(pieces) - 1.0);
                (arc.radius.si() * at.sin(), arc.radius.si() * at.cos())
            };
            let length: f64 = (0..pieces)
                .map(|k| {
                    let ((x, y), (u, v)) = (point(k), point(k + 1));
                    (u - x).hypot(v - y)
                })
                .sum();
            let cloth = span * (1.0 + slack) * (1.0 + arc.tension.si() / stiffness);
            prop_assert!((length / cloth - 1.0).abs() < 1e-6, "{} {}", length, cloth);
        }

        #[test]
        fn at_a_shallow_bow_arc_and_parabola_are_one(
            load in 1.0..100.0_f64, span in 1.0..10.0_f64, slack in 0.00001..0.0005_f64
        ) {
            let rule = ExactArc { load: newtons_per_metre(load), span: metres(span), stiffness: Force::from_si(1e7), slack };
            let arc = rule.shape(&mut Blank).unwrap();
            let cubic = tension(load, span, 1e7, slack);
            let edge = cubic.hypot(load * span / 2.0);
            // By the series of both, 1.65 times what the bow is longer than its span.
            let longer = slack + cubic / 1e7;
            prop_assert!((arc.tension.si() / edge - 1.0).abs() < 3.0 * longer, "{} {}", arc.tension.si(), edge);
        }

        #[test]
        fn the_same_in_either_unit(pressure in 1.0..60.0_f64, span in 4.0..12.0_f64, slack in 0.0..0.05_f64) {
            let us = Strip {
                pressure: psf(pressure),
                span: feet(span),
                stiffness: pounds_per_foot(5000.0),
                slack,
                width: inches(12.0),
            };
            let pound = 4.448_221_615_260_5;
            let si = Strip {
                pressure: pascals(pressure * pound / (0.3048 * 0.3048)),
                span: metres(span * 0.3048),
                stiffness: newtons_per_metre(5000.0 * pound / 0.3048),
                slack,
                width: metres(0.3048),
            };
            let (one, other) = (held(us), held(si));
            prop_assert!(((one.edge / other.edge).pure() - 1.0).abs() < 1e-12);
            prop_assert!(((one.in_plane_per_width / other.in_plane_per_width).pure() - 1.0).abs() < 1e-12);
        }
    }
}
