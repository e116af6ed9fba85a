//! The macro that makes a rule of a document from one expression.

/// A rule of a document, once: name, clause, inputs, result.
///
/// With `= expression` the rule is that formula and `work` is made from it; without one, `work` is written by
/// hand and returns a `Result`, for tables, branches and iteration.
#[macro_export]
macro_rules! rule {
    (
        #[doc = $about_rule:literal] $(#[$doc:meta])*
        $name:ident, $id:literal, $clause:expr;
        $( $(#[doc = $about:literal])+ $field:ident: $type:ty $(as $measure:ident)? = $symbol:literal; )*
        $key:ident $result:literal: $output:ty $(as $to:ident)? = $body:expr
    ) => {
        $crate::rule! { @inputs [Some(stringify!($body))]
            #[doc = $about_rule] #[doc = concat!("\n\n`", $result, " = ", stringify!($body), "`")] $(#[$doc])*
            $name, $id, $clause;
            $( $(#[doc = $about])+ $field: $type $(as $measure)? = $symbol; )*
            $key $result: $output $(as $to)?
        }
        impl $name {
            /// Works the formula.
            #[inline]
            #[must_use]
            pub fn work(self, ledger: &mut impl $crate::workings::Ledger) -> $output {
                let Self { $($field),* } = self;
                self.keep(ledger, $body)
            }
        }
        impl $crate::workings::Work for $name {
            fn try_work(self, ledger: &mut impl $crate::workings::Ledger) -> Result<$output, $crate::workings::OutOfRange> {
                Ok(self.work(ledger))
            }
        }
    };
    (
        #[doc = $about_rule:literal] $(#[$doc:meta])*
        $name:ident, $id:literal, $clause:expr;
        $( $(#[doc = $about:literal])+ $field:ident: $type:ty $(as $measure:ident)? = $symbol:literal; )*
        $key:ident $result:literal: $output:ty $(as $to:ident)?
    ) => {
        $crate::rule! { @inputs [None]
            #[doc = $about_rule] $(#[$doc])*
            $name, $id, $clause;
            $( $(#[doc = $about])+ $field: $type $(as $measure)? = $symbol; )*
            $key $result: $output $(as $to)?
        }
        impl $crate::workings::Work for $name {
            fn try_work(self, ledger: &mut impl $crate::workings::Ledger) -> Result<$output, $crate::workings::OutOfRange> {
                self.work(ledger)
            }
        }
    };
    (@inputs [$source:expr]
        #[doc = $about_rule:expr] $(#[$doc:meta])*
        $name:ident, $id:literal, $clause:expr;
        $( $(#[doc = $about:literal])+ $field:ident: $type:ty $(as $measure:ident)? = $symbol:literal; )*
        $key:ident $result:literal: $output:ty $(as $to:ident)?
    ) => {
        #[doc = $about_rule] $(#[$doc])*
        #[doc = concat!("\n\n| here | in the source | |\n|---|---|---|\n", $("| `", stringify!($field), "` | ", $symbol, " | ", $($about,)+ " |\n",)*)]
        #[derive(Debug, Clone, Copy)]
        pub struct $name { $( $(#[doc = $about])+ pub $field: $type, )* }
        impl $name {
            /// Writes this rule, its inputs and its result.
            #[inline(always)]
            fn keep(self, ledger: &mut impl $crate::workings::Ledger, result: $output) -> $output {
                ledger.write(|| $crate::workings::Entry::Worked {
                    card: <Self as $crate::workings::Rule>::CARD,
                    given: vec![$($crate::units::Value::new(self.$field, $crate::rule!(@measure $type $(as $measure)?))),*],
                    result: $crate::units::Value::new(result, $crate::rule!(@measure $output $(as $to)?)),
                });
                result
            }
        }
        impl $crate::workings::Rule for $name {
            const CARD: &'static $crate::workings::Card = &$crate::workings::Card {
                name: $id,
                about: $about_rule,
                clause: $clause,
                key: stringify!($key),
                symbol: $result,
                measure: $crate::rule!(@measure $output $(as $to)?),
                source: $source,
                given: &[$($crate::workings::Field {
                    key: stringify!($field),
                    symbol: $symbol,
                    about: concat!($($about),+),
                    measure: $crate::rule!(@measure $type $(as $measure)?),
                }),*],
            };
            type Output = $output;
            fn read(arguments: &mut $crate::workings::Arguments<'_>) -> Result<Self, Vec<$crate::workings::Mistake>> {
                $( let $field = arguments.take::<$type>(stringify!($field), $crate::rule!(@measure $type $(as $measure)?)); )*
                arguments.close()?;
                Ok(Self { $( $field: $field.expect("close() reports every value that could not be read"), )* })
            }
        }
    };
    (@measure $type:ty as $measure:ident) => { $crate::units::Measure::$measure };
    (@measure $type:ty) => { <$type as $crate::units::Quantity>::MEASURE };
}
