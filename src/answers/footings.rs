//! How deep a footing must be, by every method that the soil allows: side by side, never mixed.

use super::check::Check;
use crate::footing::Method;
use crate::numerics::ROUNDING;
use crate::source::Stated;
use crate::units::{Quantity, Velocity};
use crate::verdict::{FootingVerdict, VerdictError, basis_of, run_verdict};

/// The footing of one post by every method.
#[derive(Debug, Clone, PartialEq)]
pub struct FootingsCompared {
    /// The runs of which it is the governing post, by index; the post is the same in each.
    pub runs: Vec<usize>,
    /// The post by index.
    pub post: usize,
    /// By every method, in the order of [`Method::ALL`].
    pub by: Vec<ByMethod>,
}

/// One footing by one method.
#[derive(Debug, Clone, PartialEq)]
pub struct ByMethod {
    /// The method.
    pub method: Method,
    /// Whether it belongs with the wind code of the survey.
    pub belongs: bool,
    /// The factor it puts on the soil, where it has one.
    pub soil_factor: Option<Stated<f64>>,
    /// What was found.
    pub found: FootingVerdict,
    /// The gust in which the footing reaches its limit, where its depth is known.
    pub limit_gust: Option<Velocity>,
}

/// The footing of the governing post of each run by every method, at the worst end of what is not known; runs with the
/// same figures together.
///
/// # Errors
/// If a run cannot be worked.
pub fn footings_compared(check: &Check) -> Result<Vec<FootingsCompared>, VerdictError> {
    let (fence, site) = (&check.settled.fence, &check.settled.site);
    let basis = basis_of(site.code().level());
    let mut all: Vec<FootingsCompared> = Vec::new();
    // A method is worked as it is named, free or held, whatever the survey says of the ground.
    let mut trial = fence.clone();
    for footing in &mut trial.footings {
        footing.is_held = false;
    }
    for (run, answer) in check.runs.iter().enumerate() {
        let gust = |at: usize| answer.worst.posts[at].limit_gust.si();
        // Of two that mirror one another the first.
        let weaker = |one: usize, other: usize| gust(other) < gust(one) * (1.0 - ROUNDING);
        let posts = 0..answer.worst.posts.len();
        let Some(post) = posts.reduce(|one, other| if weaker(one, other) { other } else { one }) else {
            continue;
        };
        let mut by = Vec::with_capacity(Method::ALL.len());
        for method in Method::ALL {
            trial.footing_method = Some(method);
            let found = run_verdict(&trial, run, site)?.posts.swap_remove(post).footing;
            by.push(ByMethod {
                method,
                belongs: method.belongs_with(basis),
                soil_factor: method.soil_factor(),
                limit_gust: found.limit_gust(),
                found,
            });
        }
        match all.iter_mut().find(|one| one.post == post && one.by == by) {
            Some(one) => one.runs.push(run),
            None => all.push(FootingsCompared { runs: vec![run], post, by }),
        }
    }
    Ok(all)
}
