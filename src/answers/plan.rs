//! When to warn and when to take the cloth down, on the gusts of a forecast.

use super::check::{Check, Group, RunAnswer};
use super::levers::Lever;
use crate::source::Stated;
use crate::units::{Pure, Velocity, mph};
use crate::wind::climate::Forecast;

/// The share of the limit gust at which a crew is warned.
pub const WARN_AT: Stated<f64> = Stated {
    value: 0.6,
    because: "60 and 80 % of a stated maximum are two action levels in use for structures at events; taken of the \
              speed, which is the careful reading",
};

/// The share of the limit gust at which cloth comes down, on a forecast gust.
pub const TAKE_DOWN_AT: Stated<f64> = Stated {
    value: 0.8,
    because: "the fifth left over is for the error of a forecast; the limit gust itself is already a careful figure",
};

/// Below this forecast gust, taking cloth down is no control.
pub const LEAST_WORKABLE: Stated<Velocity> = Stated {
    value: mph(30.0),
    because: "gusts of 30 mph come too often for a crew to take cloth down before each of them",
};

/// Taking the end panels down alone helps if it lifts the limit gust of what still hangs by this much.
pub const CLEARLY_ABOVE: Stated<f64> = Stated {
    value: 1.10,
    because: "a tenth is more than a forecast tells apart; less is no reason to climb twice",
};

/// From the mean wind of a forecast to its gust: at least this.
pub const MEAN_TO_GUST_LEAST: Stated<f64> = Forecast::Least.factor();

/// From the mean wind of a forecast to its gust, inland.
pub const MEAN_TO_GUST_INLAND: Stated<f64> = Forecast::Inland.factor();

/// From the mean wind of a forecast to its gust, in a tropical cyclone over land.
pub const MEAN_TO_GUST_CYCLONE: Stated<f64> = Forecast::TropicalCyclone.factor();

/// The plan of one group of posts, at the worst end of what is not known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GroupPlan {
    /// The least limit gust among them.
    pub limit_gust: Velocity,
    /// Warn the crew on a forecast gust of this.
    pub warn: Velocity,
    /// Act on a forecast gust of this: cloth comes down; where none hangs, people keep clear.
    pub act: Velocity,
    /// Whether such a gust is rare enough to act on each time.
    pub is_workable: bool,
}

impl GroupPlan {
    /// The plan that belongs to a limit gust.
    #[must_use]
    pub fn of(limit_gust: Velocity) -> Self {
        let act = limit_gust * TAKE_DOWN_AT.value;
        Self { limit_gust, warn: limit_gust * WARN_AT.value, act, is_workable: act >= LEAST_WORKABLE.value }
    }
}

/// What comes of taking down the end panels alone.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EndPanels {
    /// The plan of the run with the rest of its cloth still hung.
    pub rest: GroupPlan,
    /// Whether that lifts the run's limit gust clearly.
    pub helps: bool,
}

/// The plan of one run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RunPlan {
    /// Posts within three cloth heights of an end of the cloth.
    pub near_ends: Option<GroupPlan>,
    /// The other posts under cloth.
    pub inside: Option<GroupPlan>,
    /// Posts without cloth beside them.
    pub bare: Option<GroupPlan>,
    /// The least gust at which something of the run but its own posts reaches its limit: a rail, what holds the cloth, a
    /// brace or guy, a corner post with the cloth of the other side.
    pub other: Option<Velocity>,
    /// The end panels taken down alone; nothing where there is no cloth or too few bays of it.
    pub end_panels: Option<EndPanels>,
}

impl RunPlan {
    /// The plan of the whole run: of its posts under cloth where it has any, else of its bare posts, or of what else goes
    /// before them.
    #[must_use]
    pub fn whole(&self) -> Option<GroupPlan> {
        let lower = |one: GroupPlan, other: GroupPlan| {
            if other.limit_gust < one.limit_gust { other } else { one }
        };
        let posts = [self.near_ends, self.inside].into_iter().flatten().reduce(lower).or(self.bare);
        posts.into_iter().chain(self.other.map(GroupPlan::of)).reduce(lower)
    }

    /// Whether cloth hangs that could be taken down.
    #[must_use]
    pub const fn has_cloth(&self) -> bool {
        self.near_ends.is_some() || self.inside.is_some()
    }
}

/// The plan of every run of a check, in their order.
///
/// Posts inside stand more wind than those near the ends of the cloth. Yet with the end panels down the cloth ends
/// further in, and the wind at an end goes with it. Whether the end panels alone are worth taking down is
/// therefore asked of the run worked again without them, never of the posts inside.
#[must_use]
pub fn plan(check: &Check) -> Vec<RunPlan> {
    let levers = check.levers.iter().map(Option::as_deref);
    check.runs.iter().zip(levers).map(|(run, levers)| run_plan(run, levers.unwrap_or_default())).collect()
}

fn run_plan(run: &RunAnswer, levers: &[super::levers::Pulled]) -> RunPlan {
    let of = |group: &Option<Group>| group.as_ref().map(|group| GroupPlan::of(group.limit_gust));
    let end_panels =
        levers.iter().find(|pulled| pulled.lever == Lever::EndPanelsOff).map(|pulled| EndPanels {
            rest: GroupPlan::of(pulled.limit_gust),
            helps: (pulled.limit_gust / pulled.limit_gust_before).pure() >= CLEARLY_ABOVE.value,
        });
    RunPlan {
        near_ends: of(&run.near_ends),
        inside: of(&run.inside),
        bare: of(&run.bare),
        other: run.other_limit_gust(),
        end_panels,
    }
}
