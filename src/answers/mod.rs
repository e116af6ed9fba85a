//! The questions people bring.

mod check;
mod compare;
mod footings;
mod levers;
mod often;
mod order;
mod plan;
mod winds;

pub use check::{Check, CheckError, Group, MeasureNext, RunAnswer, check, check_on_frame, workings};
pub(crate) use check::{flag_over_both, own_flag_over_both};
pub use compare::{
    Column, CompareError, Comparison, Figures, HighestCloth, Variant, by_codes, compare, highest_cloths,
    side_by_side,
};
pub use footings::{ByMethod, FootingsCompared, footings_compared};
pub use levers::{Lever, Pulled, highest_cloth, levers};
pub use often::{Often, often};
pub(crate) use order::tape;
pub use order::{
    Allowance, Amount, Cost, Item, OrderError, OrderList, OrderNote, PanelOrder, ScreenOrder, SiteOrder,
    What, order,
};
pub use plan::{
    CLEARLY_ABOVE, EndPanels, GroupPlan, LEAST_WORKABLE, MEAN_TO_GUST_CYCLONE, MEAN_TO_GUST_INLAND,
    MEAN_TO_GUST_LEAST, RunPlan, TAKE_DOWN_AT, WARN_AT, plan,
};
pub use winds::{First, MARGIN, RailGust, Side, Winds, clearly_before};
