//! What helps and what does not, on this fence: each change worked on its own.

use crate::fence::{Condition, End, Fence, Run, Screen, Windows};
use crate::screen::{WindowShare, WindowedSolidity, named};
use crate::units::{Length, Pure, Quantity, Velocity, feet, inches};
use crate::verdict::{RunVerdict, VerdictError, run_verdict};
use crate::wind::Site;
use crate::workings::Blank;

/// One thing that could be done to the cloth of a run.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Lever {
    /// Windows cut in: those asked for, or two of 8 in by 5 in a bay.
    Windows,
    /// Open mesh of the catalogue in place of this cloth.
    OpenMesh,
    /// The same cloth hung down to the ground.
    DownToTheGround,
    /// A foot off its lower edge.
    GapBelow,
    /// A foot off its top.
    GapAtTheTop,
    /// No cloth on the first and the last bay.
    EndPanelsOff,
    /// The cloth carried round both corners for twice its height.
    Returns,
    /// The lower half of the cloth only, from the ground.
    HalfHeight,
    /// All of it off.
    NoCloth,
}

impl Lever {
    /// Every lever.
    pub const ALL: [Self; 9] = [
        Self::Windows,
        Self::OpenMesh,
        Self::DownToTheGround,
        Self::GapBelow,
        Self::GapAtTheTop,
        Self::EndPanelsOff,
        Self::Returns,
        Self::HalfHeight,
        Self::NoCloth,
    ];

    /// A name for programs.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::Windows => "windows",
            Self::OpenMesh => "open-mesh",
            Self::DownToTheGround => "down-to-the-ground",
            Self::GapBelow => "gap-below",
            Self::GapAtTheTop => "gap-at-the-top",
            Self::EndPanelsOff => "end-panels-off",
            Self::Returns => "screened-returns",
            Self::HalfHeight => "half-height",
            Self::NoCloth => "no-cloth",
        }
    }

    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Windows => "windows cut in the cloth",
            Self::OpenMesh => "open mesh instead",
            Self::DownToTheGround => "the same cloth hung down to the ground",
            Self::GapBelow => "a 1 ft (0.30 m) gap below it",
            Self::GapAtTheTop => "1 ft (0.30 m) less at the top",
            Self::EndPanelsOff => "no cloth on the end bays",
            Self::Returns => "cloth carried round both corners, twice its height long",
            Self::HalfHeight => "half its height, from the ground",
            Self::NoCloth => "no cloth",
        }
    }

    /// The fence with this done to one run, or nothing where it cannot be done there.
    fn pulled(self, fence: &Fence, at: usize) -> Option<Fence> {
        let run = &fence.runs[at];
        let screen = run.screen.as_ref()?;
        let (foot, ground) = (feet(1.0), Length::from_si(0.0));
        let height = screen.top - screen.bottom;
        let changed = |screen: Screen| Some(Run { screen: Some(screen), ..run.clone() });
        let run = match self {
            Self::Windows => {
                let cut = screen.windows.unwrap_or(Windows {
                    width: inches(8.0),
                    height: inches(5.0),
                    per_bay: 2.0,
                });
                let (from, to) = run.screened()?;
                let bays = (screen.end_bay - screen.first_bay) as f64;
                let cloth = (to - from) * height / bays;
                let share =
                    WindowShare { window: cut.area(), count: cut.per_bay, cloth }.work(&mut Blank).min(1.0);
                // The code's factor takes the solidity of all layers; the cloth's own is set so that it comes out.
                let all = run.solidity(&mut Blank)?;
                let left = WindowedSolidity { solidity: all, share }.work(&mut Blank);
                let link = run.chain_link.map_or(0.0, |link| link.solidity(&mut Blank));
                let solidity = (1.0 - (1.0 - left) / (1.0 - link)).max(0.0);
                // The solidity left is that of the cloth as it hangs, iced or not.
                changed(Screen {
                    solidity,
                    solidity_as_return: None,
                    condition: Condition::Dry,
                    over: Vec::new(),
                    ..screen.clone()
                })
            }
            Self::OpenMesh => {
                let open = named("open mesh")?.solidity_high;
                if open >= screen.own_solidity(&mut Blank) {
                    return None;
                }
                changed(Screen {
                    solidity: open,
                    solidity_as_return: None,
                    over: Vec::new(),
                    ..screen.clone()
                })
            }
            Self::DownToTheGround => {
                if screen.bottom.si() <= 0.0 {
                    return None;
                }
                changed(Screen { bottom: ground, top: height, ..screen.clone() })
            }
            Self::GapBelow => {
                if height <= foot * 2.0 {
                    return None;
                }
                changed(Screen { bottom: screen.bottom + foot, ..screen.clone() })
            }
            Self::GapAtTheTop => {
                if height <= foot * 2.0 {
                    return None;
                }
                changed(Screen { top: screen.top - foot, ..screen.clone() })
            }
            Self::EndPanelsOff => {
                if screen.end_bay - screen.first_bay < 3 {
                    return None;
                }
                changed(Screen {
                    first_bay: screen.first_bay + 1,
                    end_bay: screen.end_bay - 1,
                    ..screen.clone()
                })
            }
            Self::Returns => {
                let long = height * 2.0;
                let has = fence.return_length(at, true) >= long && fence.return_length(at, false) >= long;
                let reaches = screen.first_bay == 0 && screen.end_bay == run.bays.len();
                if has || !reaches {
                    return None;
                }
                Some(Run { start: End::Return(long), finish: End::Return(long), ..run.clone() })
            }
            Self::HalfHeight => changed(Screen { bottom: ground, top: height * 0.5, ..screen.clone() }),
            Self::NoCloth => Some(run.bare()),
        }?;
        let mut fence = fence.clone();
        fence.runs[at] = run;
        Some(fence)
    }
}

/// A lever pulled on one run.
#[derive(Debug, Clone, PartialEq)]
pub struct Pulled {
    /// What was done.
    pub lever: Lever,
    /// The largest base moment of the run's posts over that before, in one gust.
    pub moment_times: f64,
    /// The least limit gust of the run's posts.
    pub limit_gust: Velocity,
    /// That before.
    pub limit_gust_before: Velocity,
}

impl Pulled {
    /// How many times the limit gust is what it was.
    #[must_use]
    pub fn gust_times(&self) -> f64 {
        (self.limit_gust / self.limit_gust_before).pure()
    }
}

fn largest_moment(verdict: &RunVerdict) -> f64 {
    verdict.posts.iter().map(|post| post.at_reference_gust.moment.si().abs()).fold(0.0, f64::max)
}

/// Every lever that can be pulled on a run, the one that lifts the limit gust most first.
///
/// # Errors
/// If a changed run cannot be worked.
pub fn levers(
    fence: &Fence,
    at: usize,
    site: &Site,
    before: &RunVerdict,
) -> Result<Vec<Pulled>, VerdictError> {
    let mut all = Vec::new();
    for lever in Lever::ALL {
        let Some(changed) = lever.pulled(fence, at) else { continue };
        let after = run_verdict(&changed, at, site)?;
        all.push(Pulled {
            lever,
            moment_times: largest_moment(&after) / largest_moment(before),
            limit_gust: after.limit_gust,
            limit_gust_before: before.limit_gust,
        });
    }
    all.sort_by(|one, other| other.gust_times().total_cmp(&one.gust_times()));
    Ok(all)
}

/// The highest cloth from the ground up to which a run's posts stay within their limit in a gust, and every
/// lower cloth too; nothing if even a bare fence does not, by the inch.
///
/// # Errors
/// If the run cannot be worked.
pub fn highest_cloth(
    fence: &Fence,
    at: usize,
    site: &Site,
    solidity: f64,
    gust: Velocity,
) -> Result<Option<Length>, VerdictError> {
    let run = &fence.runs[at];
    let mut trial = fence.clone();
    trial.runs[at] = run.bare();
    if run_verdict(&trial, at, site)?.limit_gust < gust {
        return Ok(None);
    }
    let (mut highest, step) = (Length::from_si(0.0), inches(1.0));
    let screen = |top| Screen {
        name: String::new(),
        solidity,
        solidity_as_return: None,
        condition: Condition::Dry,
        over: Vec::new(),
        bottom: Length::from_si(0.0),
        top,
        first_bay: 0,
        end_bay: run.bays.len(),
        windows: None,
        face: None,
        fastening: None,
    };
    while highest < run.height {
        let next = highest + step;
        let next = if next > run.height { run.height } else { next };
        trial.runs[at].screen = Some(screen(next));
        if run_verdict(&trial, at, site)?.limit_gust < gust {
            break;
        }
        highest = next;
    }
    Ok(Some(highest))
}
