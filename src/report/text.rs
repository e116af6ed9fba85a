//! The answer as text: first what can be photographed or pasted, then the tables.

use super::compare::levers_in_short;
use super::figures::{
    self, gust, gust_at_most, gust_figures, is_another_gust, listed, ratio_spread, ratio_up,
};
use super::footings::{self, Apart};
use super::frame;
use super::json::governs;
use super::told::{self, Alike};
use crate::answers::{Check, Group, Often, RunAnswer, own_flag_over_both};
use crate::caution::{CAUTIONS, NOT_CHECKED};
use crate::fence::{End, Run};
use crate::survey::RunSurvey;
use crate::units::{Dimension, Length, Measure, Quantity, System, Unit, Velocity, number};
use crate::verdict::{Flag, PostVerdict, RailCheck, RunVerdict};
use comfy_table::{CellAlignment, Table, presets};
use std::io::{self, Write};

/// How much is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Detail {
    /// The answer block alone.
    Brief,
    /// The answer, then tables in which posts that come out alike share a row.
    Usual,
    /// The same with every post.
    All,
}

/// Lines of the answer block are no longer than this.
const WIDTH: usize = 72;

/// Writes the answer to one survey.
///
/// # Errors
/// If the writer fails.
pub fn check(check: &Check, detail: Detail, out: &mut impl Write) -> io::Result<()> {
    let page = Page { check, system: check.survey.units };
    page.answer(out)?;
    if detail != Detail::Brief {
        page.tables(detail, out)?;
    }
    Ok(())
}

struct Page<'a> {
    check: &'a Check,
    system: System,
}

/// What is said of a run: its cloth, and the lines below it.
type Block = (String, Vec<u8>);

impl Page<'_> {
    fn answer(&self, out: &mut impl Write) -> io::Result<()> {
        let job = &self.check.survey.job;
        wrapped(out, "", job.title.as_deref().unwrap_or("Fence survey"))?;
        let mut about = Vec::new();
        about.extend(job.prepared_for.as_ref().map(|who| format!("for {who}")));
        about.extend(job.date.as_ref().map(|date| format!("surveyed {date}")));
        about.extend(job.measured_by.as_ref().map(|who| format!("by {who}")));
        if !about.is_empty() {
            wrapped(out, "", &about.join(" · "))?;
        }
        wrapped(out, "", &told::wind(self.check).join(" · "))?;
        writeln!(out)?;
        wrapped(out, "◇ NOT CHECKED: ", &self.not_checked())?;
        if let Some(methods) = footings::methods(self.check) {
            wrapped(out, "FOOTINGS: ", &methods)?;
        }
        if let Some(how) = frame::how(self.check) {
            wrapped(out, "FRAME: ", &how)?;
        }
        writeln!(out)?;
        for line in self.decision() {
            wrapped(out, "", &line)?;
        }
        writeln!(out)?;
        for (names, block) in self.blocks()? {
            wrapped(out, "", &format!("{}: {}", names.join(", "), block.0))?;
            out.write_all(&block.1)?;
        }
        writeln!(out)?;
        let pairs = told::pairs(self.check);
        for pair in &pairs {
            wrapped(out, "", pair)?;
        }
        if !pairs.is_empty() {
            writeln!(out)?;
        }
        let bare = |answer: &RunAnswer| {
            let best = answer.best.as_ref().map(|best| best.bare_limit_gust);
            is_another_gust(answer.worst.bare_limit_gust, best, self.system)
        };
        if self.check.runs.iter().any(|answer| self.has_lower(answer) || bare(answer)) {
            wrapped(
                out,
                "",
                "\"At best\" is the same limit if everything that is not known turns out well: no gust to count on.",
            )?;
        }
        wrapped(
            out,
            "",
            "A gust here is the 3-second gust 33 ft (10 m) up over open ground, close to what an airport reports as a \
             gust. A hand meter beside the fence reads lower. \
             Near the ends is within three cloth heights of an end of the cloth. How often it comes is an order of magnitude, by the \
             code's law for inland winds; not for hurricane coasts.",
        )?;
        writeln!(out)?;
        for caution in &CAUTIONS[..2] {
            wrapped(out, &format!("{} ", caution.word), caution.text)?;
        }
        wrapped(
            out,
            "WHO DECIDES ",
            "the local building department and a licensed engineer. This is a reckoning by the rules named, not an engineer's design.",
        )?;
        self.measure_next(out)
    }

    /// What was not checked of the fence, in the order of the parts.
    fn not_checked(&self) -> String {
        let parts = match told::unchecked_parts(self.check).join(", ") {
            none if none.is_empty() => {
                "the cloth itself, its hem and grommets, and what the whole answer lists".to_owned()
            }
            parts => parts,
        };
        match footings::then_gusts(self.check) {
            "" => format!(
                "{parts}. Gusts below are those of posts and footings; what is not checked may give way first."
            ),
            "every gust" => {
                format!("{parts}. What is not checked may give way first: every gust below is \"at most\".")
            }
            _ => format!(
                "{parts}. What is not checked may give way first: a gust below is \"at most\" where it says so."
            ),
        }
    }

    fn decision(&self) -> Vec<String> {
        let mut lines = Vec::new();
        let alike = self.alike();
        let named = |wanted: &dyn Fn(&Alike<'_>) -> bool| {
            let names: Vec<&str> =
                alike.iter().filter(|one| wanted(one)).flat_map(|one| one.names.clone()).collect();
            (!names.is_empty()).then(|| listed(&names))
        };
        let says = |one: &Alike<'_>, flag: Flag| one.answer.own_flag_of_checked() == Some(flag);
        let hung = |one: &Alike<'_>| one.run.screen.is_some();
        let most = |wanted: &dyn Fn(&Alike<'_>) -> bool| {
            let told = alike.iter().filter(|one| wanted(one));
            footings::at_most(told.flat_map(|one| &one.answer.worst.posts))
        };
        let of = |with_cloth: bool, flag: Flag| {
            let told = alike.iter().filter(|one| hung(one) == with_cloth && says(one, flag));
            Apart::of(told.map(|one| one.answer))
        };
        if !self.check.has_speed() {
            lines.push(match named(&hung) {
                Some(names) => format!(
                    "◇ DO NOT HANG YET on {names}: no design wind is known, so it is not checked. With the cloth the first \
                     {} reaches its limit in a gust of {}{}; bare, of {}. Ask the building department for the design \
                     wind; an engineer decides.",
                    Apart::of(alike.iter().filter(|one| hung(one)).map(|one| one.answer)).first(),
                    gust(least_of(&alike, &hung, |verdict| verdict.limit_gust), self.system),
                    most(&hung),
                    gust(least_of(&alike, &hung, |verdict| verdict.bare_limit_gust), self.system)
                ),
                None => "◇ No design wind is known, so it is not checked. The limit gusts below stand.".to_owned(),
            });
            return lines;
        }
        if let Some(names) = named(&|one| hung(one) && says(one, Flag::Over)) {
            let found = of(true, Flag::Over);
            let is_over = |one: &Alike<'_>| hung(one) && says(one, Flag::Over);
            let least = |of: fn(&RunVerdict) -> Velocity| least_of(&alike, &is_over, of);
            let over = |one: &&Alike<'_>| hung(one) && says(one, Flag::Over);
            let open = alike.iter().filter(over).all(|one| {
                one.answer.best.as_ref().is_some_and(|best| best.limit_gust != one.answer.worst.limit_gust)
            });
            let either = if open { " whatever the unknowns turn out to be" } else { "" };
            lines.push(format!(
                "■ DO NOT HANG the cloth as surveyed on {names}: at the design wind {} are over their limit{either}, at the \
                 worst {}. With it the first {} reaches its limit in a gust of {}{}; bare, of {}.",
                found.who(Flag::Over, "and"),
                found.times(),
                found.first(),
                gust(least(|verdict| verdict.limit_gust), self.system),
                most(&is_over),
                gust(least(|verdict| verdict.bare_limit_gust), self.system),
            ));
        }
        let rails = |one: &Alike<'_>, flag: Flag| told::rails_flag(one.answer) == Some(flag);
        // Where posts or footings are over too, not to hang it was said.
        let only = |one: &Alike<'_>| hung(one) && !says(one, Flag::Over);
        for (is_only, begins) in [(true, "DO NOT HANG the cloth as surveyed on"), (false, "Rails on")] {
            let is_over = |one: &Alike<'_>| rails(one, Flag::Over) && only(one) == is_only;
            let Some(names) = named(&is_over) else { continue };
            let over = alike.iter().filter(|one| is_over(one));
            let firsts = over.clone().filter_map(|one| one.answer.worst.rails.first());
            let gust_of = |first: &&RailCheck| first.limit_gust.map_or(f64::INFINITY, Quantity::si);
            let first = firsts.min_by(|one, other| gust_of(one).total_cmp(&gust_of(other)));
            let ratio = over.filter_map(|one| one.answer.worst.rails.ratio()).max_by(f64::total_cmp);
            if let Some((first, ratio)) = first.zip(ratio) {
                let rails = if is_only { ": its rails" } else { "" };
                lines.push(format!(
                    "■ {begins} {names}{rails} are over their limit at the design wind, at the worst {} times what they \
                     carry: first the {}, in a gust of {}.",
                    ratio_up(ratio),
                    first.place.name(),
                    gust(first.limit_gust.unwrap_or_default(), self.system)
                ));
            }
        }
        if let Some(names) = named(&|one| hung(one) && says(one, Flag::Depends)) {
            lines.push(format!(
                "◐ DO NOT HANG YET on {names}: whether the {} carry the cloth at the design wind depends on what is not known. \
                 Measure first, as listed below.",
                of(true, Flag::Depends).who(Flag::Depends, "and")
            ));
        }
        if let Some(names) = named(&|one| hung(one) && says(one, Flag::NearLimit)) {
            lines.push(format!(
                "▲ On {names} the {} with cloth are near their limit at the design wind: an engineer decides.",
                of(true, Flag::NearLimit).who(Flag::NearLimit, "and")
            ));
        }
        for one in alike.iter().filter(|one| hung(one)) {
            let Some(guy) = told::guy_over(one.answer) else { continue };
            lines.push(format!(
                "■ DO NOT HANG the cloth as surveyed on {}: the {} of post {} is over its limit at the design wind, {} times, \
                 and reaches it in a gust of {}.",
                listed(&one.names),
                guy.name,
                guy.post + 1,
                ratio_up(guy.ratio.unwrap_or_default()),
                gust(guy.limit_gust.unwrap_or_default(), self.system)
            ));
        }
        let rails_hold = |one: &Alike<'_>| !rails(one, Flag::Over) && told::guy_over(one.answer).is_none();
        if let Some(names) = named(&|one| hung(one) && says(one, Flag::Within) && rails_hold(one)) {
            lines.push(format!(
                "● On {names} the {} stay within their limit with the cloth at the design wind. What was not checked is not \
                 known: an engineer decides before anything is hung.",
                of(true, Flag::Within).checked()
            ));
        }
        if let Some(names) = named(&|one| rails(one, Flag::Depends)) {
            lines.push(format!(
                "◐ Whether the rails on {names} carry their load at the design wind depends on what is not known."
            ));
        }
        if let Some(names) = named(&|one| rails(one, Flag::NearLimit)) {
            lines.push(format!("▲ Rails on {names} are near their limit at the design wind."));
        }
        if let Some(names) = named(&|one| told::fastening_over(one.answer).is_some()) {
            let gusts = alike.iter().filter_map(|one| told::fastening_over(one.answer));
            let least = gusts.min_by(|one, other| one.si().total_cmp(&other.si())).unwrap_or_default();
            lines.push(format!(
                "■ What holds the cloth on {names} is over its strength at the design wind: pulled off the fence it starts \
                 to go in a gust of {}. Cloth that comes loose flogs and can injure.",
                gust(least, self.system)
            ));
        }
        if let Some(names) = named(&|one| !hung(one) && says(one, Flag::Over)) {
            let who = match of(false, Flag::Over).who(Flag::Over, "and") {
                posts if posts == "posts" => String::new(),
                others => format!("{others} "),
            };
            lines.push(format!("■ {names}, without cloth: {who}over at the design wind all the same."));
        }
        if let Some(names) = named(&|one| !hung(one) && says(one, Flag::Depends)) {
            lines.push(format!("◐ {names}, without cloth: whether the {} are within their limit at the design wind depends on what is not known. No cloth there before that is measured.", of(false, Flag::Depends).who(Flag::Depends, "and")));
        }
        if let Some(names) = named(&|one| !hung(one) && says(one, Flag::NearLimit)) {
            lines.push(format!(
                "▲ {names}, without cloth: near the limit of the {}.",
                of(false, Flag::NearLimit).who(Flag::NearLimit, "and")
            ));
        }
        if let Some(names) = named(&|one| !hung(one) && says(one, Flag::Within)) {
            lines.push(format!("● {names}, without cloth: the {} stay within their limit at the design wind. What was not checked is not known.", of(false, Flag::Within).checked()));
        }
        lines
    }

    /// What the answer says of each run, those of which it says the same together.
    fn blocks(&self) -> io::Result<Vec<(Vec<&str>, Block)>> {
        let mut all: Vec<(Vec<&str>, Block)> = Vec::new();
        for alike in self.alike() {
            let mut lines = Vec::new();
            self.run_block(&alike, &mut lines)?;
            let block = (self.cloth(alike.run, alike.survey), lines);
            match all.iter_mut().find(|(_, before)| *before == block) {
                Some((names, _)) => names.extend(alike.names),
                None => all.push((alike.names, block)),
            }
        }
        Ok(all)
    }

    fn run_block(&self, alike: &Alike<'_>, out: &mut impl Write) -> io::Result<()> {
        let mut gusts = Vec::new();
        let mut ratios = Vec::new();
        for (group, place) in groups(alike.answer) {
            let place = if place.is_empty() { String::new() } else { format!(" {place}") };
            gusts.push(format!(
                "{}{place}",
                gust_at_most(group.limit_gust, group.limit_gust_best, self.system)
            ));
            if let Some(worst) = group.ratio {
                let flag = group.flag_of_checked.unwrap_or(Flag::NotChecked);
                ratios.push(format!("{flag}: ratio {}{place}", ratio_spread(worst, group.ratio_best)));
            }
        }
        let most = |text: &'static str, without: &'static str| {
            if footings::at_most(alike.answer.worst.posts.iter()).is_empty() { without } else { text }
        };
        let head = most("  limit gust, at most  ", "  limit gust           ");
        wrapped(out, head, &gusts.join(", "))?;
        if alike.run.screen.is_some() {
            let (worst, best) = (&alike.answer.worst, alike.answer.best.as_ref());
            let bare =
                gust_at_most(worst.bare_limit_gust, best.map(|best| best.bare_limit_gust), self.system);
            wrapped(
                out,
                most("  bare, at most        ", "  bare                 "),
                &format!("{bare}; the cloth multiplies the load by up to {:.1}", worst.times_bare),
            )?;
        }
        let which = match groups(alike.answer).first() {
            Some((Group { often: Often::Unknown(_), .. }, _)) => "how often it comes",
            _ if self.has_lower(alike.answer) => "the lower comes",
            _ => "it comes",
        };
        wrapped(out, &format!("  {which:<21}"), &comes(alike.answer))?;
        let told = if ratios.is_empty() { Flag::NotChecked.to_string() } else { ratios.join("; ") };
        wrapped(out, "  at the design wind   ", &told)?;
        if let Some(of_posts) = footings::of_posts(alike) {
            wrapped(out, "  posts themselves     ", &format!("{of_posts}."))?;
        }
        let of_footing = footings::of_run(self.check, alike, self.system);
        if !of_footing.is_empty() {
            wrapped(out, "  footing              ", &format!("{}.", of_footing.join(". ")))?;
        }
        if let Some(on_frame) = frame::of_run(alike, self.system) {
            wrapped(out, "  on the frame         ", &format!("{on_frame}."))?;
        }
        let braces = frame::braces(alike.answer, self.system);
        for (name, guy) in frame::guys(alike.answer, self.system).into_iter().chain(braces) {
            wrapped(out, &format!("  {name:<21}"), &guy)?;
        }
        if let Some(rails) = told::rails(self.check, alike.answer) {
            wrapped(out, "  rails                ", &rails)?;
        }
        for (head, text) in told::winds(self.check, alike).into_iter().flatten() {
            wrapped(out, &format!("  {head:<21}"), &text)?;
        }
        Ok(())
    }

    /// Whether a limit gust of a run is told at both ends of what is not known.
    fn has_lower(&self, answer: &RunAnswer) -> bool {
        groups(answer)
            .iter()
            .any(|(group, _)| is_another_gust(group.limit_gust, group.limit_gust_best, self.system))
    }

    fn cloth(&self, run: &Run, survey: &RunSurvey) -> String {
        told::cloth(run, survey, self.system)
    }

    fn measure_next(&self, out: &mut impl Write) -> io::Result<()> {
        let lines = told::measure_next(self.check);
        if lines.is_empty() {
            return Ok(());
        }
        writeln!(out)?;
        writeln!(out, "MEASURE NEXT")?;
        for line in lines {
            wrapped(out, "  - ", &line)?;
        }
        Ok(())
    }

    fn tables(&self, detail: Detail, out: &mut impl Write) -> io::Result<()> {
        writeln!(out)?;
        rule(out, "Post by post")?;
        wrapped(
            out,
            "",
            "You stand inside the court, facing the fence: post 1 is at your left, bay 1 lies between posts 1 and 2. Wind \
             from the start comes along the fence from your left, from the finish from your right.",
        )?;
        wrapped(
            out,
            "",
            "Shear, moment and strength are those at the foot of a post at the design wind, at the worst end of what is \
             not known; bare is without the cloth. Ratio and limit gust stand for both ends where they differ.",
        )?;
        if footings::posts(self.check).any(footings::is_worked) {
            wrapped(
                out,
                "",
                "The ratio of a footing stands in the table of footings; limit gust and flag of a post are those of the post \
                 or its footing, whichever goes first.",
            )?;
        }
        for alike in self.alike() {
            self.run_tables(&alike, detail, out)?;
        }
        if self.check.levers.iter().any(Option::is_some) {
            writeln!(out)?;
            rule(out, "What helps (lifts the limit gust by 5 % or more) and what does not")?;
            for alike in self.alike() {
                let Some(pulled) = &self.check.levers[alike.at] else { continue };
                let (helps, not) = levers_in_short(pulled, self.system);
                let worst = &alike.answer.worst;
                let now = match &worst.frame {
                    Some(Ok(on_frame)) => {
                        format!("{} by hand statics", gust(on_frame.hand_limit_gust, self.system))
                    }
                    _ => gust(worst.limit_gust, self.system),
                };
                wrapped(out, "", &format!("{}: now {now}", alike.names.join(", ")))?;
                wrapped(out, "  helps          ", &helps)?;
                wrapped(out, "  does not help  ", &not)?;
                if let Some(first) = footings::goes_first(alike.answer) {
                    wrapped(out, "  first to go    ", first)?;
                }
            }
        }
        writeln!(out)?;
        rule(out, "Remarks")?;
        let mut told: Vec<(String, Vec<String>)> = Vec::new();
        for remark in &self.check.remarks {
            // What is said of several runs in the same words is said once.
            let text = remark.text(self.system);
            let (head, body) = match text.split_once(": ") {
                Some((head, body)) if self.check.settled.fence.runs.iter().any(|run| run.name == head) => {
                    (vec![head.to_owned()], body.to_owned())
                }
                _ => (Vec::new(), text),
            };
            match told.iter_mut().find(|(before, _)| *before == body) {
                Some((_, heads)) => heads.extend(head),
                None => told.push((body, head)),
            }
        }
        for (body, heads) in told {
            let head = if heads.is_empty() { String::new() } else { format!("{}: ", heads.join(", ")) };
            wrapped(out, "- ", &format!("{head}{body}"))?;
        }
        for line in told::notes(&self.check.survey) {
            wrapped(out, "- ", &line)?;
        }
        writeln!(out)?;
        rule(out, "◇ Not checked")?;
        for (_, text) in NOT_CHECKED {
            wrapped(out, "- ", text)?;
        }
        writeln!(out)?;
        rule(out, "Cautions")?;
        for caution in CAUTIONS {
            wrapped(out, &format!("{} ", caution.word), caution.text)?;
        }
        writeln!(out)?;
        let code = self.check.survey.site.code.document();
        wrapped(
            out,
            "",
            &format!(
                "By {}; strength of posts by {}. Every step with its clause: --workings \"RUN/POST\". Survey {}, fencegust {}.",
                code.title,
                told::strength_documents(self.check),
                self.check.survey.hash,
                env!("CARGO_PKG_VERSION")
            ),
        )
    }

    fn run_tables(&self, alike: &Alike<'_>, detail: Detail, out: &mut impl Write) -> io::Result<()> {
        let (run, answer) = (alike.run, alike.answer);
        writeln!(out)?;
        let mut about = vec![
            format!("{}: {} bays, {}", alike.names.join(", "), run.bays.len(), self.length(run.length())),
            format!("fence {} high", self.length(run.height)),
            self.cloth(run, alike.survey),
        ];
        if let Some(solidity) = answer.worst.solidity {
            let least = answer.best.as_ref().and_then(|best| best.solidity).filter(|best| *best != solidity);
            about.push(match least {
                Some(least) => format!("all layers {least:.3} to {solidity:.3} solid"),
                None => format!("all layers {solidity:.3} solid"),
            });
        }
        about.extend(alike.survey.fastening.as_ref().map(|fastening| fastening.text.clone()));
        wrapped(out, "", &about.join("; "))?;
        for (at, run) in self.check.settled.fence.runs.iter().enumerate() {
            if alike.names.contains(&run.name.as_str()) {
                let ends = format!("left end {}; right end {}", self.end(at, true), self.end(at, false));
                let whose = if alike.names.len() > 1 { format!("{}: ", run.name) } else { String::new() };
                wrapped(out, "", &format!("{whose}{ends}"))?;
            }
        }
        writeln!(out, "\n{}\n", self.post_table(alike, detail).trim_fmt())?;
        if let Some(feet) = self.footing_table(alike, detail) {
            writeln!(out, "{}\n", feet.trim_fmt())?;
        }
        if frame::is_worked(answer) {
            wrapped(out, "", &format!("{} {}", frame::FIRST_TABLE, frame::WHY))?;
            if !run.guys.is_empty() {
                wrapped(out, "", frame::BRACED)?;
            }
            writeln!(out, "\n{}\n", self.frame_table(alike, detail).trim_fmt())?;
            for line in frame::rails(answer, self.system) {
                wrapped(out, "", &line)?;
            }
            writeln!(out)?;
        }
        if let Some(bays) = self.bay_table(alike, detail) {
            writeln!(out, "{}", bays.trim_fmt())?;
        }
        if alike.answer.worst.rails.first().is_some() {
            writeln!(out, "\n{}", self.rail_table(alike, detail).trim_fmt())?;
        }
        Ok(())
    }

    fn end(&self, at: usize, start: bool) -> String {
        let fence = &self.check.settled.fence;
        let run = &fence.runs[at];
        let returned = fence.return_length(at, start);
        let counts = if run.screen.is_none() {
            String::new()
        } else if returned.si() > 0.0 {
            format!(", its cloth counts as a return of {}", self.length(returned))
        } else {
            ", whose cloth is too low, too open or none: no return counts".to_owned()
        };
        match if start { run.start } else { run.finish } {
            End::Free => "free".to_owned(),
            End::Return(length) => format!("a corner, its cloth a return of {}", self.length(length)),
            End::Corner(corner) => format!("the corner with {}{counts}", fence.runs[corner.run].name),
        }
    }

    fn post_table(&self, alike: &Alike<'_>, detail: Detail) -> Table {
        let (run, answer) = (alike.run, alike.answer);
        let unit = |measure: Measure| measure.printed(self.system).0;
        let head = vec![
            "posts".to_owned(),
            "role, kind".to_owned(),
            format!("shear {}", unit(Measure::Force)),
            format!("moment {}", unit(Measure::Moment)),
            format!("bare {}", unit(Measure::Moment)),
            format!("strength {}", unit(Measure::Moment)),
            "ratio".to_owned(),
            format!("limit gust {}", unit(Measure::Speed)),
            format!("bare {}", unit(Measure::Speed)),
            "checked parts".to_owned(),
        ];
        let mut rows = Rows::new(detail);
        for (at, post) in answer.worst.posts.iter().enumerate() {
            let best = answer.best.as_ref().map(|best| &best.posts[at]);
            let flag = own_flag_over_both(post, best);
            let figure = |measure: Measure, si: Option<f64>| {
                si.map_or_else(|| "-".to_owned(), |si| number(measure.in_unit(si.abs(), self.system), 0))
            };
            let gust = |worst, best| gust_figures(worst, best, self.system);
            let kind = &run.posts[at];
            rows.add(
                at + 1,
                vec![
                    format!("{}, {}", kind.role.word(), self.check.settled.fence.kinds[kind.kind].name),
                    figure(Measure::Force, post.design.map(|load| load.shear.si())),
                    figure(Measure::Moment, post.design.map(|load| load.moment.si())),
                    figure(Measure::Moment, post.bare_design.map(|load| load.moment.si())),
                    figure(Measure::Moment, post.parts[0].capacity.map(|value| value.si)),
                    post.ratio_of_post().map_or_else(
                        || "-".to_owned(),
                        |worst| ratio_spread(worst, best.and_then(PostVerdict::ratio_of_post)),
                    ),
                    gust(post.limit_gust, best.map(|best| best.limit_gust)),
                    gust(post.bare_limit_gust, best.map(|best| best.bare_limit_gust)),
                    flag.unwrap_or(Flag::NotChecked).to_string(),
                ],
            );
        }
        rows.table(head, &[2, 3, 4, 5, 6, 7, 8])
    }

    /// What the posts stand in, held against the design wind; nothing where no footing was.
    fn footing_table(&self, alike: &Alike<'_>, detail: Detail) -> Option<Table> {
        let worst = &alike.answer.worst.posts;
        if !worst.iter().any(|post| post.footing.checked.is_ok()) {
            return None;
        }
        let unit = |measure: Measure| measure.printed(self.system).0;
        let head = vec![
            "footings".to_owned(),
            "stands in".to_owned(),
            format!("load {}", unit(Measure::Force)),
            format!("at {}", unit(Measure::Distance)),
            format!("carries {}", unit(Measure::Force)),
            "deep".to_owned(),
            "needs".to_owned(),
            "ratio".to_owned(),
            "footing".to_owned(),
        ];
        let mut rows = Rows::new(detail);
        for (at, post) in worst.iter().enumerate() {
            let footing = &post.footing;
            let best = alike.answer.best.as_ref().map(|best| &best.posts[at].footing);
            let best = best.and_then(|best| best.checked.as_ref().ok()).map(|found| found.ratio);
            let none = || "-".to_owned();
            let deep = footing.depth.map_or_else(none, |depth| footings::depth(depth, self.system));
            let needs = footings::needed(footing, self.system).unwrap_or_else(none);
            let stands = match (footing.shape, footing.width) {
                (Some(shape), Some(width)) => {
                    format!("{}, {}", shape.word(), footings::depth(width.across, self.system))
                }
                _ => "not known".to_owned(),
            };
            let force =
                |force: crate::units::Force| number(Measure::Force.in_unit(force.si(), self.system), 0);
            let cells = match &footing.checked {
                Ok(found) => {
                    let flag = Flag::of(found.ratio);
                    let flag = best.map_or(flag, |best| Flag::of_both_ends(flag, Flag::of(best)));
                    [
                        force(found.demand.force),
                        number(Measure::Distance.in_unit(found.demand.height.si(), self.system), 1),
                        force(found.capacity),
                        deep,
                        needs,
                        ratio_spread(found.ratio, best),
                        flag.to_string(),
                    ]
                }
                Err(_) => [none(), none(), none(), deep, needs, none(), Flag::NotChecked.to_string()],
            };
            rows.add(at + 1, std::iter::once(stands).chain(cells).collect());
        }
        Some(rows.table(head, &[2, 3, 4, 5, 6, 7]))
    }

    /// What the posts do on the frame, beside hand statics.
    fn frame_table(&self, alike: &Alike<'_>, detail: Detail) -> Table {
        let head = std::iter::once("posts".to_owned()).chain(frame::heads(self.system)).collect();
        let mut rows = Rows::new(detail);
        for (at, post) in alike.answer.worst.posts.iter().enumerate() {
            if let Some(cells) = frame::cells(post, self.system) {
                rows.add(at + 1, cells.to_vec());
            }
        }
        rows.table(head, &[1, 2, 3, 4, 5, 6, 7])
    }

    fn bay_table(&self, alike: &Alike<'_>, detail: Detail) -> Option<Table> {
        let bays = alike.answer.worst.bays.as_ref()?;
        let unit = |measure: Measure| measure.printed(self.system).0;
        let head = vec![
            "bays".to_owned(),
            "width".to_owned(),
            format!("mean pressure {}", unit(Measure::Pressure)),
            format!("force {}", unit(Measure::Force)),
            "case".to_owned(),
        ];
        let mut rows = Rows::new(detail);
        let decimals = if self.system == System::Us { 1 } else { 0 };
        for (at, bay) in bays.iter().enumerate() {
            let gate = ["", ", gate", ", double gate"][alike.run.bays[at].leaves()];
            rows.add(
                at + 1,
                vec![
                    format!("{}{gate}", self.length(alike.run.bays[at].width)),
                    number(Measure::Pressure.in_unit(bay.pressure.si(), self.system), decimals),
                    number(Measure::Force.in_unit(bay.force.si(), self.system), 0),
                    governs(self.check, bay.place, bay.zone, bay.case),
                ],
            );
        }
        Some(rows.table(head, &[2, 3]))
    }

    fn rail_table(&self, alike: &Alike<'_>, detail: Detail) -> Table {
        let mut rows = Rows::new(detail);
        for (bay, cells) in told::rail_rows(alike.answer, self.system) {
            rows.add(bay, cells);
        }
        rows.table(told::rail_heads(self.system), &[4, 5, 6, 7, 8])
    }

    fn alike(&self) -> Vec<Alike<'_>> {
        told::alike(self.check)
    }

    fn length(&self, length: Length) -> String {
        figures::length(length, self.system)
    }
}

/// The least of a gust over some runs.
fn least_of(
    alike: &[Alike<'_>],
    wanted: &dyn Fn(&Alike<'_>) -> bool,
    of: fn(&RunVerdict) -> Velocity,
) -> Velocity {
    alike
        .iter()
        .filter(|one| wanted(one))
        .map(|one| of(&one.answer.worst))
        .min_by(|a, b| a.si().total_cmp(&b.si()))
        .unwrap_or_default()
}

/// How often the limit gusts of a run come; the reason once where it is not known.
fn comes(answer: &RunAnswer) -> String {
    let groups = groups(answer);
    match groups.first() {
        Some((Group { often: Often::Unknown(why), .. }, _)) => format!("not known: {why}"),
        _ => {
            let told = |(group, place): &(&Group, &str)| {
                format!("{} {place}", group.often.words()).trim_end().to_owned()
            };
            groups.iter().map(told).collect::<Vec<_>>().join(", ")
        }
    }
}

/// The groups of a run with where they stand.
fn groups(answer: &RunAnswer) -> Vec<(&Group, &'static str)> {
    let mut groups = Vec::new();
    let cloth = answer.near_ends.is_some() || answer.inside.is_some();
    groups.extend(answer.near_ends.as_ref().map(|group| (group, "near the ends")));
    groups.extend(answer.inside.as_ref().map(|group| (group, "inside")));
    groups.extend(answer.bare.as_ref().map(|group| (group, if cloth { "without cloth" } else { "" })));
    groups.extend(answer.corners.as_ref().map(|group| (group, "at corners with cloth round them")));
    groups
}

/// Text wrapped to the width of the answer block, later lines indented under the first.
pub(super) fn wrapped(out: &mut impl Write, head: &str, text: &str) -> io::Result<()> {
    wrapped_to(WIDTH, out, head, text)
}

/// The same to another width.
pub(super) fn wrapped_to(width: usize, out: &mut impl Write, head: &str, text: &str) -> io::Result<()> {
    let indent = " ".repeat(head.chars().count().min(24));
    let options = textwrap::Options::new(width)
        .initial_indent(head)
        .subsequent_indent(&indent)
        .break_words(false)
        .word_splitter(textwrap::WordSplitter::NoHyphenation);
    for line in textwrap::wrap(&units_beside_figures(text), options) {
        writeln!(out, "{}", line.replace(NO_BREAK, " "))?;
    }
    Ok(())
}

/// A blank at which no line ends.
const NO_BREAK: char = '\u{a0}';

/// Text in which a unit keeps to its figure, so that no line begins with one.
fn units_beside_figures(text: &str) -> String {
    let mut kept = String::with_capacity(text.len());
    for (at, word) in text.split(' ').enumerate() {
        let unit = word.trim_end_matches([',', '.', ';', ':', ')']);
        let after_figure = kept.ends_with(|sign: char| sign.is_ascii_digit());
        if at > 0 {
            kept.push(if after_figure && is_measured_in(unit) { NO_BREAK } else { ' ' });
        }
        kept.push_str(word);
    }
    kept
}

/// Whether something is measured in this; years are counted, and read on over the end of a line.
fn is_measured_in(unit: &str) -> bool {
    Unit::named(unit).is_some_and(|unit| unit.dimension != Dimension::Years)
}

pub(super) fn rule(out: &mut impl Write, title: &str) -> io::Result<()> {
    writeln!(out, "{title}")?;
    writeln!(out, "{}", "─".repeat(WIDTH))
}

/// Rows of a table; those that come out alike are told together unless all are asked for.
struct Rows {
    detail: Detail,
    rows: Vec<(Vec<usize>, Vec<String>)>,
}

impl Rows {
    const fn new(detail: Detail) -> Self {
        Self { detail, rows: Vec::new() }
    }
    fn add(&mut self, number: usize, cells: Vec<String>) {
        match self.rows.iter_mut().find(|(_, before)| self.detail != Detail::All && *before == cells) {
            Some((numbers, _)) => numbers.push(number),
            None => self.rows.push((vec![number], cells)),
        }
    }
    fn table(self, head: Vec<String>, right: &[usize]) -> Table {
        let mut table = Table::new();
        table.load_style(presets::NOTHING).set_header(head);
        for (numbers, cells) in self.rows {
            table.add_row(std::iter::once(spans(&numbers)).chain(cells));
        }
        for (at, column) in table.column_iter_mut().enumerate() {
            column.set_padding((0, 2));
            if right.contains(&at) {
                column.set_cell_alignment(CellAlignment::Right);
            }
        }
        table
    }
}

/// "1, 3-5" of 1, 3, 4, 5.
pub(super) fn spans(numbers: &[usize]) -> String {
    let mut text: Vec<String> = Vec::new();
    let mut at = 0;
    while at < numbers.len() {
        let mut end = at;
        while end + 1 < numbers.len() && numbers[end + 1] == numbers[end] + 1 {
            end += 1;
        }
        match end - at {
            0 => text.push(numbers[at].to_string()),
            1 => text.extend([numbers[at].to_string(), numbers[end].to_string()]),
            _ => text.push(format!("{}-{}", numbers[at], numbers[end])),
        }
        at = end + 1;
    }
    text.join(", ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn neighbours_are_told_as_spans() {
        assert_eq!(spans(&[1, 3, 4, 5, 7, 8]), "1, 3-5, 7, 8");
        assert_eq!(spans(&[2]), "2");
    }
}
