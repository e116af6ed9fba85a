//! Lists of tables of a run that each name posts: posts that differ, back braces and guys, braces.

use super::layers::{Layers, Reader};
use super::run::RunReader;
use std::ops::Range;
use toml::de::{DeInteger, DeValue};

/// What such a list is called, and what its tables hold.
pub(super) struct ListOf {
    /// The key of the list.
    pub(super) key: &'static str,
    /// What it is.
    pub(super) is: &'static str,
    /// The key of the numbers of posts.
    pub(super) numbers: &'static str,
    /// What is said where a table has none.
    pub(super) without: &'static str,
    /// The keys of a table.
    pub(super) keys: &'static [&'static str],
    /// What may be written.
    pub(super) write: &'static str,
}

/// What one table holds, with its posts by number and where it is written.
pub(super) struct AtPosts<T> {
    pub(super) found: T,
    pub(super) posts: Vec<usize>,
    pub(super) name: String,
    pub(super) at: Range<usize>,
}

impl<'t> RunReader<'_, 't> {
    /// Table by table, with `posts` of the run where they could be counted; nothing where one cannot be read.
    pub(super) fn at_posts<T>(
        &self,
        list: &ListOf,
        posts: Option<usize>,
        reader: &mut Reader,
        mut read: impl FnMut(&Layers<'t>, &mut Reader) -> Option<T>,
    ) -> Option<Vec<AtPosts<T>>> {
        let Some((value, origin)) = reader.find(&self.layers, list.key) else {
            return if self.has(list.key) { None } else { Some(Vec::new()) };
        };
        let DeValue::Array(tables) = value.get_ref() else {
            reader.mistake(value.span(), list.is, list.write);
            return None;
        };
        let (mut all, mut fine) = (Vec::new(), true);
        for item in tables {
            let DeValue::Table(table) = item.get_ref() else {
                reader.mistake(item.span(), list.is, list.write);
                fine = false;
                continue;
            };
            reader.check_keys(table, list.keys, list.key, &[], &[]);
            let layers = Layers {
                tables: vec![(table, origin.clone())],
                deal: None,
                ..self.part(list.key, item.span())
            };
            reader.noted(&layers);
            let found = read(&layers, reader);
            let numbers = if let Some(DeValue::Array(numbers)) =
                table.get(list.numbers).map(toml::Spanned::get_ref)
                && !numbers.is_empty()
            {
                self.numbers(numbers, &layers.name, posts, reader)
            } else {
                reader.mistake(item.span(), list.without, list.write);
                None
            };
            match found.zip(numbers) {
                Some((found, posts)) => {
                    all.push(AtPosts { found, posts, name: layers.name.clone(), at: item.span() });
                }
                None => fine = false,
            }
        }
        fine.then_some(all)
    }

    /// Numbers of posts of this run, from 1, each once.
    fn numbers(
        &self,
        numbers: &[toml::Spanned<DeValue<'_>>],
        name: &str,
        posts: Option<usize>,
        reader: &mut Reader,
    ) -> Option<Vec<usize>> {
        let (mut found, mut fine) = (Vec::new(), true);
        for number in numbers {
            let at = match number.get_ref() {
                DeValue::Integer(at) => whole(at),
                _ => None,
            };
            let what = match (at, posts) {
                (Some(at), _) if found.contains(&at) => format!("{name} names post {at} twice"),
                (Some(at), None) if at >= 1 => {
                    found.push(at);
                    continue;
                }
                (Some(at), Some(posts)) if (1..=posts).contains(&at) => {
                    found.push(at);
                    continue;
                }
                (_, Some(posts)) => {
                    format!("{} has posts 1 to {posts}, seen from inside", self.layers.name)
                }
                (_, None) => format!("{} counts posts from 1, seen from inside", self.layers.name),
            };
            reader.mistake(number.span(), what, "");
            fine = false;
        }
        fine.then_some(found)
    }
}

fn whole(at: &DeInteger<'_>) -> Option<usize> {
    at.to_string().parse().ok()
}
