//! Every rule that can be asked by name has an entry here, and keeps what its entry says of it.
//!
//! An entry is the rule's name and, set in below it, its claims, `;` between two. One claim for each input, in the
//! card's order, says where it is sampled and how the result goes with it while the others stand anywhere in their own
//! ranges:
//!
//! | claim | the result |
//! |---|---|
//! | `height 15 to 60 ft rises` | rises with the input; `falls`: falls |
//! | `solidity 0 to 1 never falls` | rises or stands still, and rises somewhere; `never rises`: the same downwards |
//! | `speed 60 to 180 mph ^2` | goes with this power of the input |
//! | `distance 0 to 20 ft turns` | both rises and falls on the way |
//! | `return_over_s 2 to 9 nothing` | is the same all over the range |
//!
//! Then as many of these as the rule has:
//!
//! | claim | |
//! |---|---|
//! | `swap first second` | the two inputs may change places |
//! | `at solidity 0 is 0` | the result where inputs (a comma between two) have these values, the others anywhere |
//! | `at second 0 lbf is 0.75 first` | the same as a share of an input |
//! | `at loss 1e9 nears 1` | the same in a limit, within a thousandth |
//! | `at wall 0 in refused` | told as out of the rule's range |
//! | `at solidity 1 gives no number` | told as no number, where the rule knows no range and divides by nought |
//!
//! Every entry is held to two things more that need no claim: worked from text in one system of units and in the
//! other the result is the same to 1e-12; and inputs at nought, below it, minute or immense give a number or an
//! error, never a step that is no number.
//!
//! A new rule: one entry in the order of the names. The ranges are those of fences and their weather, inside what the
//! source gives; the claims are what its reader expects of it before working it. What ties rules to one another
//! (equilibrium, a sum of parts, a way there and back) stands in tests of its own at the end.

use fencegust::rules::{all, named};
use fencegust::units::{Dimension, System, UNITS, Unit, Value, read};
use fencegust::workings::{Arguments, Card, Entry as Step, Field, Listed, Mistake};
use proptest::collection::vec;
use proptest::test_runner::{Config, RngAlgorithm, TestCaseError, TestRng, TestRunner};
use std::cell::Cell;

const TABLE: &str = "
aisc360-16/allowable-moment
    nominal 1 to 20 kip-ft ^1; safety 1.2 to 3 ^-1
    at safety 1 is 1 nominal
aisc360-16/design-moment
    resistance 0.5 to 1 ^1; nominal 1 to 20 kip-ft ^1
    at resistance 1 is 1 nominal
aisc360-16/design-shear
    resistance 0.5 to 1 ^1; nominal 1 to 50 kip ^1
    at resistance 1 is 1 nominal
aisc360-16/design-wall
    nominal 0.05 to 0.4 in ^1
    at nominal 0.1 in is 0.093 in
aisc360-16/f8-1
    yield_strength 25 to 60 ksi ^1; modulus 0.2 to 9 in³ ^1
    at yield_strength 30 ksi, modulus 2 in³ is 60 kip-in
# The factor in bending, 0.90, comes with it.
aisc360-16/f8-1-both-formats
    yield_strength 25 to 60 ksi ^1; modulus 0.2 to 9 in³ ^1
    at yield_strength 30 ksi, modulus 2 in³ is 54 kip-in
# The thinner the wall, the nearer to first yield of the outermost fibre, and no more.
aisc360-16/f8-2
    elastic 28000 to 30000 ksi rises; slenderness 40 to 300 falls; yield_strength 25 to 60 ksi rises
    modulus 0.2 to 9 in³ ^1
    at slenderness 1e9, yield_strength 30 ksi, modulus 2 in³ nears 60 kip-in; at slenderness 0 gives no number
aisc360-16/f8-3
    elastic 28000 to 30000 ksi ^1; slenderness 150 to 400 ^-1; modulus 0.2 to 9 in³ ^1
    at elastic 1000 ksi, slenderness 330, modulus 1 in³ is 1 kip-in
aisc360-16/f8-compact-limit
    modulus 28000 to 30000 ksi ^1; yield_strength 25 to 60 ksi ^-1
    at modulus 1000 ksi, yield_strength 1 ksi is 70
aisc360-16/f8-noncompact-limit
    modulus 28000 to 30000 ksi ^1; yield_strength 25 to 60 ksi ^-1
    at modulus 1000 ksi, yield_strength 1 ksi is 310
aisc360-16/g5-1
    stress 5 to 36 ksi ^1; area 0.4 to 8 in² ^1
    at stress 10 ksi, area 2 in² is 10 kip
aisc360-16/g5-2
    elastic 28000 to 30000 ksi never falls; length 5 to 15 ft never rises; diameter 2 to 4 in never falls
    slenderness 20 to 400 never rises; yield_strength 25 to 60 ksi never falls
    at slenderness 10, elastic 29000 ksi is 0.6 yield_strength
aisc360-16/tube-moment
    diameter 2 to 4 in rises; wall 0.1 to 0.3 in rises; yield_strength 25 to 46 ksi ^1
    at diameter 6 in, wall 3 in, yield_strength 30 ksi is 1080 kip-in; at diameter 0 in refused
    at wall 0 in refused; at diameter 2 in, wall 1.01 in refused; at diameter 4 in, wall 0.004 in refused
asce7-10/exposure-coefficient
    height 15 to 200 ft rises; gradient_height 700 to 1200 ft falls; power 7 to 11.5 rises
    at height 900 ft, gradient_height 900 ft is 2.01
asce7-10/velocity-pressure
    constant 0.002 to 0.003 psf/mph² ^1; exposure_coefficient 0.57 to 1.2 ^1; topographic_factor 1 to 2 ^1
    directionality 0.85 to 1 ^1; speed 60 to 180 mph ^2
    at constant 0.00256 psf/mph², exposure_coefficient 1, topographic_factor 1, directionality 1, speed 100 mph is 25.6 psf
asce7-16/case-b-pressure
    mean 5 to 60 psf ^1; distance 1 to 19 ft falls; length 20 to 100 ft rises
    at distance 0 ft is 2.2 mean; at distance 15 ft, length 30 ft is 1 mean
    at distance 30 ft, length 30 ft is -0.2 mean
asce7-16/case-c-reduction
    s_over_h 0.8 to 1 falls
    at s_over_h 0.8 is 1; at s_over_h 1 is 0.8
asce7-16/elevation-factor
    elevation 100 to 8000 ft falls; rate 0.00003 to 0.00004 /ft falls
    at elevation 0 ft is 1; at rate 0 /ft is 1
asce7-16/exposure-coefficient
    height 15 to 200 ft rises; gradient_height 700 to 1200 ft falls; power 7 to 11.5 rises
    at height 900 ft, gradient_height 900 ft is 2.01
asce7-16/least-pressure
    least 5 to 20 psf ^1; share 0.3 to 1 ^1
    at share 1 is 1 least
asce7-16/open-cloth-pressure
    pressure 5 to 60 psf ^1; solidity 0.1 to 0.7 ^1
    at solidity 0.5 is 0.5 pressure
asce7-16/open-frame-flat
    solidity 0 to 0.7 never rises
    at solidity 0 is 2; at solidity 0.1 is 1.8; at solidity 0.29 is 1.8; at solidity 0.7 is 1.6
    at solidity 0.71 refused
asce7-16/open-frame-pressure
    velocity_pressure 5 to 60 psf ^1; gust 0.85 to 1 ^1; coefficient 1.2 to 2 ^1
    at gust 1, coefficient 1 is 1 velocity_pressure
asce7-16/open-frame-round
    solidity 0 to 0.7 never falls
    at solidity 0 is 1.2; at solidity 0.1 is 1.3; at solidity 0.29 is 1.3; at solidity 0.7 is 1.5
    at solidity 0.71 refused
asce7-16/openings-factor
    solidity 0 to 0.99 rises
    at solidity 0 is 0; at solidity 0.75 is 0.875; at solidity 1 is 1
asce7-16/resultant-height
    bottom 0 to 6 ft rises; height 2 to 12 ft rises; s_over_h 0.8 to 1 rises
    at bottom 0 ft, s_over_h 0.8 is 0.5 height; at bottom 0 ft, s_over_h 0.3 is 0.5 height
    at bottom 0 ft, s_over_h 1 is 0.55 height
asce7-16/return-factor
    return_over_s 0.3 to 3 never rises
    at return_over_s 0 is 1; at return_over_s 0.29 is 1; at return_over_s 0.3 is 0.9; at return_over_s 2 is 0.6
    at return_over_s 1e6 is 0.6; at return_over_s -0.1 refused
asce7-16/velocity-pressure
    constant 0.002 to 0.003 psf/mph² ^1; exposure_coefficient 0.57 to 1.2 ^1; topographic_factor 1 to 2 ^1
    directionality 0.85 to 1 ^1; elevation_factor 0.7 to 1 ^1; speed 60 to 180 mph ^2
    at constant 0.00256 psf/mph², exposure_coefficient 1, topographic_factor 1, directionality 1, elevation_factor 1, speed 100 mph is 25.6 psf
asce7-16/velocity-pressure-si
    exposure_coefficient 0.57 to 1.2 ^1; topographic_factor 1 to 2 ^1; directionality 0.85 to 1 ^1
    elevation_factor 0.7 to 1 ^1; speed 25 to 80 m/s ^2
    at exposure_coefficient 1, topographic_factor 1, directionality 1, elevation_factor 1, speed 10 m/s is 61.3 Pa
# Held where the table prints that it holds, refused where there is no wall.
asce7-16/wall-coefficient
    s_over_h 0.16 to 1 never rises; b_over_s 0.05 to 2 never rises
    at s_over_h 0.01, b_over_s 0.01 is 1.95; at s_over_h 1, b_over_s 45 is 1.3
    at s_over_h 1, b_over_s 1e9 is 1.3; at s_over_h 1.01 refused; at s_over_h 0 refused; at b_over_s 0 refused
asce7-16/wall-coefficient-fit
    s_over_h 0.5 to 1 falls; b_over_s 0.05 to 6 falls
    at b_over_s 0 gives no number
asce7-16/wall-pressure
    velocity_pressure 5 to 60 psf ^1; gust 0.85 to 1 ^1; coefficient 0.55 to 4.3 ^1; factor 0.3 to 1 ^1
    at gust 1, coefficient 1, factor 1 is 1 velocity_pressure
asce7-16/zone-coefficient
    b_over_s 4 to 10 rises; distance_over_s 0 to 2.9 never rises
    at b_over_s 2, distance_over_s 0 is 2.25; at b_over_s 45, distance_over_s 11 is 0.55
    at b_over_s 1e6, distance_over_s 0 is 4.3; at b_over_s 1.9 refused; at distance_over_s -0.1 refused
    at b_over_s 5, distance_over_s 5.1 refused
asce7-16/zone-factor
    openings 0.4 to 1 ^1; reduction 0.8 to 1 ^1; corner 0.6 to 1 ^1
    at openings 1, reduction 1 is 1 corner
asce7-22/directed-pressure
    velocity_pressure 5 to 60 psf ^1; directionality 0.85 to 1 ^1
    at directionality 1 is 1 velocity_pressure
asce7-22/exposure-coefficient
    height 15 to 200 ft rises; gradient_height 1935 to 3280 ft falls; power 7.5 to 11.5 rises
    at height 2000 ft, gradient_height 2000 ft is 2.41
asce7-22/velocity-pressure
    constant 0.002 to 0.003 psf/mph² ^1; exposure_coefficient 0.57 to 1.2 ^1; topographic_factor 1 to 2 ^1
    elevation_factor 0.7 to 1 ^1; speed 60 to 180 mph ^2
    at constant 0.00256 psf/mph², exposure_coefficient 1, topographic_factor 1, elevation_factor 1, speed 100 mph is 25.6 psf
# Turned round, the law gives a twelfth of a year, a month, where its logarithm is nought.
climate/asce-inverse
    over_fifty 0.4 to 1.4 rises
    at over_fifty 0.36 is 1/12 years
climate/asce-ratio
    return_period 1 to 3000 years rises
    at return_period 50 years nears 1; at return_period 0 years gives no number
climate/asce-return-period
    speed 50 to 100 mph rises; design 110 to 140 mph falls; design_return_period 300 to 1700 years rises
    at speed 115 mph, design 115 mph is 1 design_return_period; at speed 0 mph refused; at design 0 mph refused
    at design_return_period 4 years refused; at design_return_period 3001 years refused
    at speed 200 mph, design 100 mph refused
climate/asce-speed
    design 80 to 180 mph ^1; design_return_period 5 to 3000 years falls; return_period 5 to 3000 years rises
    at design_return_period 700 years, return_period 700 years is 1 design; at design 0 mph refused
    at design_return_period 4 years refused; at return_period 4 years refused
    at return_period 3001 years refused
climate/asce-speed-from-fifty-year
    fifty_year 60 to 140 mph ^1; return_period 5 to 3000 years rises
    at return_period 50 years nears 1 fifty_year; at fifty_year 0 mph refused; at return_period 4 years refused
    at return_period 3001 years refused
climate/averaging-conversion
    speed 10 to 80 mph ^1; from 1 to 3600 s rises; to 1 to 3600 s falls
    at from 60 s, to 60 s is 1 speed; at from 0.9 s refused; at to 0.9 s refused; at from 3601 s refused
    at to 3601 s refused
climate/averaging-fit
    time 1 to 3600 s falls; scale 20 to 60 s rises
    at time 0 s is 1.617; at time 40 s, scale 40 s is 1.297; at time 1e12 s nears 0.977
climate/averaging-time
    time 1 to 3600 s falls
    at time 38.14 s is 1.297; at time 0.9 s refused; at time 3601 s refused
climate/days-a-year
    return_period 0.05 to 2 years ^-1; times 1 to 4 ^1
    at return_period 1 years is 1 times; at return_period 0.0001 years is 365
# Cloth that is up in rarer winds than the map's: below 1; with no shape left it would not matter.
climate/en-cprob
    chance 0.05 to 0.2 falls; fundamental 0.01 to 0.04 rises; shape 0.1 to 0.3 falls; exponent 0.4 to 1 falls
    at chance 0.02, fundamental 0.02 is 1; at shape 0 is 1; at exponent 0 is 1; at chance 0 gives no number
    at chance 1 gives no number
climate/encounter
    return_period 2 to 3000 years falls; span 1 to 50 years rises
    at span 0 years is 0; at return_period 1 years is 1; at return_period 0.2 years is 1
    at return_period 50 years, span 1 years is 0.02; at span 1e9 years nears 1
climate/fastest-mile
    fastest_mile 60 to 140 mph rises
    at fastest_mile 60 mph is 73.2 mph; at fastest_mile 140 mph is 159 mph; at fastest_mile 59 mph refused
    at fastest_mile 141 mph refused
climate/forecast-gust
    mean 10 to 60 mph ^1; factor 1.4 to 1.75 ^1
    at factor 1 is 1 mean
climate/monthly-maxima
    mean 10 to 40 mph rises; deviation 2 to 8 mph rises; return_period 1 to 100 years rises
    at deviation 0 mph is 1 mean
climate/over-fifty-year
    speed 30 to 180 mph ^1; design 80 to 180 mph ^-1; design_ratio 1 to 1.5 ^1
    at speed 115 mph, design 115 mph is 1 design_ratio
climate/scaled-speed
    design 80 to 180 mph ^1; ratio 0.7 to 1.5 ^1; design_ratio 1 to 1.5 ^-1
    at ratio 1, design_ratio 1 is 1 design
loads/area-force
    pressure 5 to 60 psf ^1; area 10 to 200 ft² ^1
    at pressure 20 psf, area 90 ft² is 1800 lbf
loads/chain-link
    pressure 5 to 60 psf ^1; solidity 0.05 to 0.3 ^1; height 1 to 12 ft ^1
    at pressure 20 psf, solidity 0.1, height 10 ft is 20 lb/ft
loads/cloth
    pressure 5 to 60 psf ^1; height 1 to 12 ft ^1
    at pressure 20 psf, height 9 ft is 180 lb/ft
loads/mesh-and-post
    pressure 5 to 60 psf ^1; coefficient 1.2 to 2 ^1; solidity 0.05 to 0.3 rises; bay 5 to 12 ft rises
    diameter 2 to 4 in rises
    at pressure 10 psf, coefficient 1, solidity 0, diameter 3 in is 2.5 lb/ft
    at pressure 10 psf, coefficient 1, solidity 0.1, bay 10 ft, diameter 0 in is 10 lb/ft
loads/post-face
    pressure 5 to 60 psf ^1; diameter 2 to 4 in ^1; height 1 to 12 ft ^1; share 0.3 to 1 ^1
    at pressure 20 psf, diameter 3 in, height 10 ft, share 1 is 50 lbf
loads/rail
    pressure 5 to 60 psf ^1; diameter 1 to 3 in ^1
    at pressure 24 psf, diameter 2 in is 4 lb/ft
screen/chain-link-solidity
    mesh 1 to 3 in falls; wire 0.1 to 0.2 in rises
    at wire 0 in is 0; at mesh 0 in is 1
screen/combined-solidity
    first 0 to 0.99 rises; second 0 to 0.99 rises
    swap first second; at first 0 is 1 second; at first 1 is 1
screen/load-factor
    loss 0.01 to 100 rises
    at loss 0 is 0; at loss 2 is 2/3; at loss 1e9 nears 1; at loss -0.1 refused
screen/load-factor-of-through-velocity
    through 0.05 to 0.95 falls
    at through 0 is 1; at through 1 is 0
screen/load-factor-plate
    solidity 0 to 0.95 rises
    at solidity 0 is 0; at solidity 1 is 1; at solidity 1.1 refused; at solidity -0.1 refused
screen/load-factor-wire
    first 0 to 0.95 rises; second 0 to 0.95 rises
    swap first second; at first 0, second 0 is 0; at first 1 is 1; at first 1.1 refused; at second 1.1 refused
    at second -0.1 refused
screen/loss-oblique
    loss 0.1 to 50 ^1; angle 0 to 45 ° falls
    at angle 0 ° is 1 loss; at angle 45 ° is 0.5 loss; at angle 46 ° refused; at angle -1 ° refused
screen/loss-plate
    solidity 0 to 0.95 rises
    at solidity 0 is 0; at solidity 1 gives no number
screen/loss-series
    first 0 to 50 rises; second 0 to 50 rises
    swap first second; at first 0 is 1 second
screen/loss-vents
    loss 3 to 50 rises; share 0.01 to 0.3 falls; discharge 0.6 to 0.7 falls
    at share 0 is 1 loss; at share 1, discharge 0.5 is 4; at loss 1e15, share 0.5, discharge 0.5 nears 16
screen/loss-wire
    solidity 0.05 to 0.95 rises; mesh_factor 1 to 2.1 rises
    at solidity 0 is 0; at solidity 0.5, mesh_factor 1 is 1.5; at solidity 1 gives no number
screen/permeability-loss
    pressure 50 to 300 Pa ^1; density 1 to 1.3 kg/m³ ^-1; permeability 100 to 1000 cfm/ft² ^-2
    at pressure 100 Pa, density 2 kg/m³, permeability 1000 L/(m² s) is 100
# The rounds stand still at the root: half the wind through goes with k = 40/9, all of it with none.
screen/through-velocity
    loss 0.1 to 50 falls; guess 0.1 to 0.95 turns
    at loss 40/9, guess 0.5 is 0.5; at loss 0, guess 1 is 1; at guess 0 gives no number
screen/window-share
    window 0.2 to 4 ft² ^1; count 1 to 8 ^1; cloth 40 to 120 ft² ^-1
    at window 1 ft², cloth 100 ft² is 0.01 count
screen/windowed-solidity
    solidity 0.3 to 1 ^1; share 0 to 0.9 falls
    at share 0 is 1 solidity; at share 1 is 0
section/girth-diameter
    girth 5 to 20 in ^1
    at girth 31.41592653589793 in is 10 in
section/round-tube
    diameter 2 to 4 in rises; wall 0.05 to 0.9 in rises
    at diameter 6 in, wall 3 in is 36 in³; at diameter 0 in refused; at wall 0 in refused
    at diameter 2 in, wall 1.01 in refused
section/rusted-diameter
    diameter 1.9 to 4 in rises; rust 0 to 0.1 in falls
    at rust 0 in is 1 diameter; at diameter 3 in, rust 0.1 in is 2.8 in
section/rusted-wall
    wall 0.1 to 0.3 in rises; rust 0 to 0.1 in falls
    at rust 0 in is 1 wall; at wall 0.2 in, rust 0.2 in is 0 in
section/tube-area
    diameter 2 to 4 in rises; inner 0 to 1.9 in falls
    at diameter 2 in, inner 2 in is 0 in²; at diameter 20 in, inner 0 in is 314.1592653589793 in²
section/tube-elastic-modulus
    diameter 2 to 4 in rises; inner 0 to 1.9 in falls
    at diameter 2 in, inner 2 in is 0 in³
section/tube-inner-diameter
    diameter 1.9 to 4 in rises; wall 0 to 0.3 in falls
    at wall 0 in is 1 diameter; at diameter 2 in, wall 1 in is 0 in
section/tube-plastic-modulus
    diameter 2 to 4 in rises; inner 0 to 1.9 in falls
    at diameter 2 in, inner 2 in is 0 in³; at diameter 6 in, inner 0 in is 36 in³
section/tube-radius-of-gyration
    diameter 2 to 4 in rises; inner 0 to 1.9 in rises
    swap diameter inner; at inner 0 in is 0.25 diameter; at diameter 4 in, inner 3 in is 1.25 in
section/tube-second-moment
    diameter 2 to 4 in rises; inner 0 to 1.9 in falls
    at diameter 2 in, inner 2 in is 0 in⁴
statics/base-moment
    force 50 to 5000 lbf ^1; arm 1 to 12 ft ^1
    at force 100 lbf, arm 5 ft is 500 lb-ft
statics/cantilever-moment
    load 1 to 200 lb/ft ^1; height 3 to 20 ft ^2
    at load 2 lb/ft, height 10 ft is 100 lb-ft
statics/post-share
    near 0 to 3 ft falls; far 4 to 8 ft rises; load_near 5 to 500 lb/ft rises; load_far 5 to 500 lb/ft rises
    bay 12 to 20 ft rises
    at near 0 ft, far 12 ft, bay 12 ft, load_near 10 lb/ft, load_far 10 lb/ft is 60 lbf
    at near 4 ft, far 4 ft is 0 lbf
units/length
    reading 0.1 to 50 ft ^1
    at reading 1 ft is 0.3048 m
verdict/corner-moment
    first 0.1 to 30 kip-ft rises; second 0.1 to 30 kip-ft rises
    swap first second; at second 0 kip-ft is 0.75 first; at first 3 kip-ft, second 4 kip-ft is 3.75 kip-ft
verdict/corner-shear
    first 50 to 5000 lbf rises; second 50 to 5000 lbf rises
    swap first second; at second 0 lbf is 0.75 first; at first 300 lbf, second 400 lbf is 375 lbf
verdict/limit-gust
    gust 30 to 180 mph ^1; ratio 0.1 to 10 ^-0.5
    at ratio 1 is 1 gust; at ratio 4 is 0.5 gust; at ratio 0 gives no number
verdict/moment-ratio
    demand 0.1 to 30 kip-ft ^1; capacity 1 to 20 kip-ft ^-1
    at demand 0 kip-ft is 0; at demand -3 kip-ft, capacity 4 kip-ft is 0.75
    at capacity 0 kip-ft gives no number
verdict/shear-ratio
    demand 50 to 5000 lbf ^1; capacity 1000 to 50000 lbf ^-1
    at demand 0 lbf is 0; at demand -3 kip, capacity 4 kip is 0.75; at capacity 0 lbf gives no number
windows/openings-change
    solidity 0.7 to 1 rises; window_width 4 to 24 in falls; window_height 4 to 12 in falls
    windows_per_bay 1 to 8 falls; bay_width 8 to 12 ft rises; cloth_height 6 to 10 ft rises
    swap window_width window_height; swap bay_width cloth_height; at windows_per_bay 0 is 0
    at windows_per_bay -1 refused; at solidity 0 refused; at solidity 1.01 refused; at window_width 0 in refused
    at window_height 0 in refused; at bay_width 0 ft refused; at cloth_height 0 ft refused
    at windows_per_bay 1000 refused
";

/// How often each entry is sampled.
const CASES: u32 = 24;

/// How a result goes with one input.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Way {
    Rises,
    Falls,
    NeverFalls,
    NeverRises,
    Power(f64),
    Turns,
    Nothing,
}

/// Where one input is sampled, in a unit of its kind, and how the result goes with it.
struct Sampled {
    field: &'static Field,
    from: f64,
    to: f64,
    unit: &'static str,
    way: Way,
}

/// What a result is to be at some place.
enum Wanted {
    Value(f64),
    Share(f64, &'static Field),
    Refused,
    NoNumber,
}

/// A claim of the second kind: inputs with a fixed text, and what comes out.
struct At {
    text: &'static str,
    fixed: Vec<(&'static str, &'static str)>,
    wanted: Wanted,
    tolerance: f64,
}

/// Whether a claim holds; if not, what was seen and where.
type Held = Result<(), String>;

/// An entry with its claims read.
struct Claims {
    listed: &'static Listed,
    sampled: Vec<Sampled>,
    swaps: Vec<(&'static str, &'static str)>,
    at: Vec<At>,
}

/// Inputs as text, in the card's order.
type Inputs = Vec<(&'static str, String)>;

impl Claims {
    /// Reads an entry; what is wrong with it is told with the claim.
    fn read(name: &str, claims: &[&'static str]) -> Result<Self, String> {
        let listed =
            named(name).map_err(|nearest| format!("{name} is no rule; the nearest is {nearest:?}"))?;
        let mut read = Self { listed, sampled: Vec::new(), swaps: Vec::new(), at: Vec::new() };
        for claim in claims {
            read.add(claim).map_err(|why| format!("{name}: \"{claim}\": {why}"))?;
        }
        let keys = |fields: &[Sampled]| fields.iter().map(|one| one.field.key).collect::<Vec<_>>();
        let asked: Vec<_> = listed.card.given.iter().map(|field| field.key).collect();
        if keys(&read.sampled) != asked {
            return Err(format!("{name}: one claim for each input in this order: {asked:?}"));
        }
        Ok(read)
    }

    fn add(&mut self, claim: &'static str) -> Result<(), String> {
        let words: Vec<&'static str> = claim.split(' ').collect();
        match words[..] {
            ["swap", one, other] => self.swaps.push((self.field(one)?.key, self.field(other)?.key)),
            ["at", ..] => {
                let at = self.place(claim)?;
                self.at.push(at);
            }
            [key, from, "to", to, ref rest @ ..] => {
                let (unit, way) = match *rest {
                    [ref unit @ .., "never", "falls"] => (unit, Way::NeverFalls),
                    [ref unit @ .., "never", "rises"] => (unit, Way::NeverRises),
                    [ref unit @ .., "rises"] => (unit, Way::Rises),
                    [ref unit @ .., "falls"] => (unit, Way::Falls),
                    [ref unit @ .., "turns"] => (unit, Way::Turns),
                    [ref unit @ .., "nothing"] => (unit, Way::Nothing),
                    [ref unit @ .., power] => {
                        let power = power.strip_prefix('^').ok_or("no such way")?;
                        (unit, Way::Power(number(power)?))
                    }
                    [] => return Err("it does not say how the result goes".into()),
                };
                let field = self.field(key)?;
                let dimension = field.measure.dimension();
                let unit = match unit {
                    [] if dimension == Dimension::Ratio => "",
                    _ => {
                        let written = unit.join(" ");
                        let unit = Unit::named(&written).ok_or_else(|| format!("no unit \"{written}\""))?;
                        if unit.dimension != dimension {
                            return Err(format!("{} does not measure {}", unit.symbol, field.key));
                        }
                        unit.symbol
                    }
                };
                let (from, to) = (number(from)?, number(to)?);
                if from >= to || (matches!(way, Way::Power(_)) && from <= 0.0) {
                    return Err("that is no range".into());
                }
                self.sampled.push(Sampled { field, from, to, unit, way });
            }
            _ => return Err("no such claim".into()),
        }
        Ok(())
    }

    fn place(&self, claim: &'static str) -> Result<At, String> {
        let rest = &claim["at ".len()..];
        let (fixed, wanted, tolerance) = if let Some(fixed) = rest.strip_suffix(" refused") {
            (fixed, Wanted::Refused, 0.0)
        } else if let Some(fixed) = rest.strip_suffix(" gives no number") {
            (fixed, Wanted::NoNumber, 0.0)
        } else {
            let (fixed, result, tolerance) = match (rest.split_once(" is "), rest.split_once(" nears ")) {
                (Some((fixed, result)), None) => (fixed, result, 1e-9),
                (None, Some((fixed, result))) => (fixed, result, 1e-3),
                _ => return Err("it does not say what the result is".into()),
            };
            let wanted = match result.split_once(' ') {
                Some((share, key)) if self.field(key).is_ok() => {
                    Wanted::Share(number(share)?, self.field(key)?)
                }
                _ => Wanted::Value(
                    read(result, self.card().measure.dimension()).map_err(|error| error.to_string())?,
                ),
            };
            (fixed, wanted, tolerance)
        };
        let fixed = fixed
            .split(", ")
            .map(|one| one.split_once(' ').ok_or_else(|| format!("\"{one}\" is no value of an input")))
            .collect::<Result<Vec<_>, _>>()?;
        for (key, _) in &fixed {
            self.field(key)?;
        }
        Ok(At { text: claim, fixed, wanted, tolerance })
    }

    fn card(&self) -> &'static Card {
        self.listed.card
    }

    fn field(&self, key: &str) -> Result<&'static Field, String> {
        self.card().given.iter().find(|field| field.key == key).ok_or_else(|| format!("no input {key}"))
    }

    /// Every input somewhere in its range, by as many shares of it.
    fn inputs(&self, shares: &[f64]) -> Inputs {
        self.sampled.iter().zip(shares).map(|(one, share)| (one.field.key, one.text(*share))).collect()
    }

    fn work(&self, inputs: &Inputs) -> Result<Value, Vec<Mistake>> {
        work(self.listed, inputs)
    }

    fn number(&self, inputs: &Inputs) -> Result<f64, TestCaseError> {
        self.work(inputs).map(|value| value.si).map_err(|told| self.failed(&format!("{told:?}"), inputs))
    }

    fn failed(&self, what: &str, inputs: &Inputs) -> TestCaseError {
        TestCaseError::fail(format!("{}: {what}; inputs {inputs:?}", self.card().name))
    }
}

impl Sampled {
    fn value(&self, share: f64) -> f64 {
        self.from * (1.0 - share) + self.to * share
    }

    fn text(&self, share: f64) -> String {
        format!("{} {}", self.value(share), self.unit).trim_end().to_owned()
    }
}

fn number(text: &str) -> Result<f64, String> {
    text.parse().map_err(|_| format!("{text} is no number"))
}

/// Names and claims of a table: a name stands at the head of a line, its claims below it set in, `;` between two.
fn parts(table: &'static str) -> Vec<(&'static str, Vec<&'static str>)> {
    let mut entries: Vec<(&str, Vec<&str>)> = Vec::new();
    for line in table.lines().filter(|line| !line.is_empty() && !line.starts_with('#')) {
        match (line.strip_prefix("    "), entries.last_mut()) {
            (Some(claims), Some((_, all))) => all.extend(claims.split("; ")),
            _ => entries.push((line, Vec::new())),
        }
    }
    entries
}

fn entries() -> Vec<Claims> {
    let read = |(name, claims): &(&str, Vec<&'static str>)| Claims::read(name, claims);
    parts(TABLE).iter().map(|entry| read(entry).unwrap_or_else(|why| panic!("{why}"))).collect()
}

fn work(listed: &Listed, inputs: &Inputs) -> Result<Value, Vec<Mistake>> {
    let given = inputs.iter().map(|(key, text)| (*key, text.as_str())).collect();
    let mut ledger = Vec::new();
    let result = listed.work(&mut Arguments::new(given), &mut ledger);
    if result.is_ok() {
        for step in &ledger {
            let (what, values) = match step {
                Step::Worked { card, given, result } => (card.name, [given.as_slice(), &[*result]].concat()),
                Step::Judged { symbol, value, .. } => (*symbol, vec![*value]),
                Step::Added { symbol, result, .. } => (*symbol, vec![*result]),
                Step::Solved { .. } | Step::Heading(_) => continue,
            };
            let real = values.iter().all(|value| !value.si.is_nan());
            assert!(real, "{}: {what} is no number on the way; inputs {inputs:?}", listed.card.name);
        }
    }
    result
}

fn with(inputs: &Inputs, changed: &[(&str, String)]) -> Inputs {
    let mut inputs = inputs.clone();
    for (key, text) in &mut inputs {
        if let Some((_, new)) = changed.iter().find(|(changed, _)| changed == key) {
            text.clone_from(new);
        }
    }
    inputs
}

/// Holds a claim at as many samples as [`CASES`], the same ones every time.
fn sampled(claims: &Claims, more: usize, holds: impl Fn(&[f64]) -> Result<(), TestCaseError>) -> Held {
    let config = Config { cases: CASES, failure_persistence: None, ..Config::default() };
    let rng = TestRng::deterministic_rng(RngAlgorithm::ChaCha);
    let shares = vec(0.0..1.0_f64, claims.sampled.len() + more);
    let mut runner = TestRunner::new_with_rng(config, rng);
    runner.run(&shares, |shares| holds(&shares)).map_err(|failed| failed.to_string())
}

/// Each result goes with each of its inputs as the entry says.
fn goes_with_its_inputs(claims: &Claims) -> Held {
    for (at, one) in claims.sampled.iter().enumerate() {
        let (rose, fell) = (Cell::new(0), Cell::new(0));
        sampled(claims, 1, |shares| {
            let inputs = claims.inputs(shares);
            let of = |share| claims.number(&with(&inputs, &[(one.field.key, one.text(share))]));
            let low = shares[at] * 0.9;
            let high = low + (1.0 - low) * (0.1 + 0.9 * shares[claims.sampled.len()]);
            // Where it may turn, a closer look: from one end to the other the turn would be missed.
            let places = match one.way {
                Way::Turns => (0..=10).map(|step| f64::from(step) / 10.0).collect(),
                _ => vec![low, high],
            };
            for two in places.windows(2) {
                let (before, now) = (of(two[0])?, of(two[1])?);
                let slack = 1e-12 * before.abs().max(now.abs());
                let (rises, falls) = (now > before + slack, now < before - slack);
                let held = match one.way {
                    Way::Rises => rises,
                    Way::Falls => falls,
                    Way::NeverFalls => !falls,
                    Way::NeverRises => !rises,
                    Way::Nothing => !rises && !falls,
                    Way::Turns => true,
                    Way::Power(power) => {
                        let wanted = (one.value(two[1]) / one.value(two[0])).powf(power);
                        (now / before / wanted - 1.0).abs() < 1e-9
                    }
                };
                if !held {
                    let what = format!("{} {:?}: {before}, then {now}", one.field.key, one.way);
                    return Err(claims.failed(&what, &inputs));
                }
                rose.set(rose.get() + u32::from(rises));
                fell.set(fell.get() + u32::from(falls));
            }
            Ok(())
        })?;
        let moved = match one.way {
            Way::NeverFalls => rose.get() > 0,
            Way::NeverRises => fell.get() > 0,
            Way::Turns => rose.get() > 0 && fell.get() > 0,
            _ => true,
        };
        if !moved {
            return Err(format!(
                "{}: {} {:?}: it was not seen to",
                claims.card().name,
                one.field.key,
                one.way
            ));
        }
    }
    Ok(())
}

/// The result is what the entry says at edges and in limits.
fn is_at_its_edges_what_is_said(claims: &Claims) -> Held {
    for at in &claims.at {
        let fixed: Vec<_> = at.fixed.iter().map(|(key, text)| (*key, (*text).to_owned())).collect();
        sampled(claims, 0, |shares| {
            let anywhere = claims.inputs(shares);
            // Beside the results inside the ranges a nought is measured.
            let reach = claims.number(&anywhere)?.abs();
            let inputs = with(&anywhere, &fixed);
            let result = claims.work(&inputs);
            let near = |value: &Value, wanted: f64| {
                (value.si - wanted).abs() <= at.tolerance * wanted.abs().max(1e-6 * reach)
            };
            let held = match (&at.wanted, &result) {
                (Wanted::Value(wanted), Ok(value)) => near(value, *wanted),
                (Wanted::Share(share, field), Ok(value)) => near(value, share * si(&inputs, field)),
                (Wanted::Refused, Err(told)) => matches!(told[..], [Mistake::OutOfRange(_)]),
                (Wanted::NoNumber, Err(told)) => matches!(told[..], [Mistake::NoNumber(_)]),
                _ => false,
            };
            if held { Ok(()) } else { Err(claims.failed(&format!("{}: {result:?}", at.text), &inputs)) }
        })?;
    }
    Ok(())
}

/// Inputs that may change places do.
fn may_be_swapped(claims: &Claims) -> Held {
    for (one, other) in &claims.swaps {
        sampled(claims, 0, |shares| {
            let inputs = claims.inputs(shares);
            let swapped = with(&inputs, &[(one, text(&inputs, other)), (other, text(&inputs, one))]);
            let (here, there) = (claims.number(&inputs)?, claims.number(&swapped)?);
            if (here - there).abs() <= 1e-12 * here.abs() {
                Ok(())
            } else {
                Err(claims.failed(&format!("{here}, and {there} with {one} and {other} swapped"), &inputs))
            }
        })?;
    }
    Ok(())
}

/// Inputs written in the units of one system and of the other give the same.
fn is_the_same_in_either_system(claims: &Claims) -> Held {
    sampled(claims, 0, |shares| {
        let inputs = claims.inputs(shares);
        let written = |system| -> Inputs {
            let in_unit = |field: &Field| {
                let (symbol, unit) = unit_in(field, system);
                (field.key, format!("{} {symbol}", si(&inputs, field) / unit).trim_end().to_owned())
            };
            claims.card().given.iter().map(in_unit).collect()
        };
        let (us, metric) = (written(System::Us), written(System::Si));
        let one_unit = |field: &Field| field.measure.dimension() == Dimension::Years;
        if us == metric && !claims.card().given.iter().all(one_unit) {
            return Err(claims.failed("written twice in the same units", &us));
        }
        let (ours, theirs) = (claims.number(&us)?, claims.number(&metric)?);
        if (ours - theirs).abs() <= 1e-12 * ours.abs() {
            Ok(())
        } else {
            Err(claims.failed(&format!("{ours}, and {theirs} from {metric:?}"), &us))
        }
    })
}

/// The unit in which an input is printed in one system. Where both print the same, metric stands for another unit of
/// its kind: per cent for a plain number, radians for degrees.
fn unit_in(field: &Field, system: System) -> (&'static str, f64) {
    let (us, si) = (field.measure.printed(System::Us).0, field.measure.printed(System::Si).0);
    let unit = if us == si && system == System::Si {
        let dimension = field.measure.dimension();
        UNITS.iter().find(|unit| unit.dimension == dimension && unit.symbol != us).or(Unit::named(us))
    } else {
        Unit::named(if system == System::Si { si } else { us })
    };
    unit.map_or(("", 1.0), |unit| (unit.symbol, unit.si))
}

/// Inputs at the edge of all numbers, one or two at a time, give a number or an error that says what is wrong.
fn stands_any_input(claims: &Claims) -> Held {
    let middle = claims.inputs(&vec![0.5; claims.sampled.len()]);
    let edges = |one: &Sampled| {
        [0.0, -one.to, 1e-300, 1e300, -1e300].map(|value| (one.field.key, format!("{value:e} {}", one.unit)))
    };
    let mut tried = Vec::new();
    for (at, one) in claims.sampled.iter().enumerate() {
        for edge in edges(one) {
            tried.push(with(&middle, std::slice::from_ref(&edge)));
            for other in claims.sampled[at + 1..].iter().flat_map(edges) {
                tried.push(with(&middle, &[edge.clone(), other]));
            }
        }
    }
    for inputs in tried {
        let clear = match claims.work(&inputs) {
            Ok(value) => value.si.is_finite(),
            Err(told) => match &told[..] {
                [Mistake::OutOfRange(error)] => !error.value.si.is_nan() && !error.what.is_empty(),
                [Mistake::NoNumber(key)] => *key == claims.card().key,
                _ => false,
            },
        };
        if !clear {
            return Err(format!("{}: {:?}; inputs {inputs:?}", claims.card().name, claims.work(&inputs)));
        }
    }
    Ok(())
}

fn text(inputs: &Inputs, key: &str) -> String {
    inputs.iter().find(|(name, _)| *name == key).unwrap().1.clone()
}

fn si(inputs: &Inputs, field: &Field) -> f64 {
    read(&text(inputs, field.key), field.measure.dimension()).unwrap()
}

fn all_hold(check: fn(&Claims) -> Held) {
    let wrong: Vec<String> = entries().iter().filter_map(|claims| check(claims).err()).collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn every_rule_has_one_entry_and_every_entry_is_of_a_rule() {
    let names: Vec<_> = parts(TABLE).into_iter().map(|(name, _)| name).collect();
    let without: Vec<_> = all().map(|listed| listed.card.name).filter(|name| !names.contains(name)).collect();
    assert!(without.is_empty(), "these rules have no entry: {without:#?}");
    assert_eq!(entries().len(), all().count());
    for two in names.windows(2) {
        assert!(two[0] < two[1], "{} stands before {}: one entry a rule, in order", two[0], two[1]);
    }
}

#[test]
fn a_result_goes_with_each_input_as_its_entry_says() {
    all_hold(goes_with_its_inputs);
}

#[test]
fn a_result_is_at_its_edges_and_in_its_limits_what_its_entry_says() {
    all_hold(is_at_its_edges_what_is_said);
}

#[test]
fn inputs_that_may_change_places_do() {
    all_hold(may_be_swapped);
}

#[test]
fn a_rule_worked_in_either_system_of_units_gives_the_same() {
    all_hold(is_the_same_in_either_system);
}

#[test]
fn inputs_at_the_edge_of_all_numbers_give_a_number_or_an_error_that_says_what_is_wrong() {
    all_hold(stands_any_input);
}

#[test]
fn a_false_claim_is_found_out() {
    const ROUND: &str = "section/tube-radius-of-gyration";
    const RIGHT: [&str; 2] = ["diameter 2 to 4 in rises", "inner 0 to 1.9 in rises"];
    let found = |name, claims: &[&'static str], check: fn(&Claims) -> Held| {
        check(&Claims::read(name, claims).unwrap())
    };
    for way in ["falls", "never rises", "nothing", "turns", "^1", "^-1"] {
        let claim = Box::leak(format!("diameter 2 to 4 in {way}").into_boxed_str());
        let told = found(ROUND, &[claim, RIGHT[1]], goes_with_its_inputs).unwrap_err();
        assert!(told.contains(ROUND) && told.contains("diameter"), "{told}");
    }
    // Where the table holds its edge nothing moves, so that nothing rises and "never" is no claim.
    for way in ["rises", "falls", "never falls", "never rises", "turns", "^1"] {
        let claim = Box::leak(format!("return_over_s 2 to 9 {way}").into_boxed_str());
        assert!(found("asce7-16/return-factor", &[claim], goes_with_its_inputs).is_err(), "{way}");
    }
    assert_eq!(
        found("asce7-16/return-factor", &["return_over_s 2 to 9 nothing"], goes_with_its_inputs),
        Ok(())
    );
    for place in [
        "at inner 0 in is 0.251 diameter",
        "at inner 0 in nears 0.251 diameter",
        "at inner 0 in is 0 in",
        "at diameter 4 in, inner 3 in is 1.2501 in",
        "at inner 0 in refused",
        "at inner 0 in gives no number",
    ] {
        assert!(found(ROUND, &[RIGHT[0], RIGHT[1], place], is_at_its_edges_what_is_said).is_err(), "{place}");
    }
    let area = ["diameter 2 to 4 in rises", "inner 0 to 1.9 in falls", "swap diameter inner"];
    assert!(found("section/tube-area", &area, may_be_swapped).is_err());
    assert_eq!(found(ROUND, &[RIGHT[0], RIGHT[1], "swap diameter inner"], may_be_swapped), Ok(()));
}

#[test]
fn an_entry_that_cannot_be_read_says_why() {
    let told = |name, claims: &[&'static str]| match Claims::read(name, claims) {
        Ok(_) => panic!("{name}: {claims:?} was read"),
        Err(why) => why,
    };
    assert!(told("section/tube-aria", &[]).contains("section/tube-area"));
    for (claims, why) in [
        (&["girth 5 to 20 in"][..], "no such way"),
        (&["girth 5 to 20 psf ^1"], "does not measure"),
        (&["girth 5 to 20 cubits ^1"], "cubits"),
        (&["girth 5 to 20 ^1"], "no unit"),
        (&["girth 20 to 5 in ^1"], "no range"),
        (&["girth 0 to 5 in ^1"], "no range"),
        (&["width 5 to 20 in ^1"], "no input width"),
        (&["girth 5 to 20 in ^1", "girth 5 to 20 in ^1"], "one claim for each input"),
        (&[], "one claim for each input"),
        (&["girth 5 to 20 in ^1", "at girth 0 in"], "does not say what"),
        (&["girth 5 to 20 in ^1", "at girth 0 in is 0 psf"], "psf"),
        (&["girth 5 to 20 in ^1", "swap girth wall"], "no input wall"),
        (&["girth 5 to 20 in ^1", "near nought it is nought"], "no such claim"),
    ] {
        let said = told("section/girth-diameter", claims);
        assert!(said.contains(why), "{claims:?}: {said}");
    }
}

/// A rule worked by name on SI figures.
fn of(name: &str, given: &[(&'static str, f64)]) -> Result<f64, TestCaseError> {
    let listed = named(name).unwrap();
    let written = |(key, si): &(&'static str, f64)| {
        let field = listed.card.given.iter().find(|field| field.key == *key).unwrap();
        let unit = UNITS.iter().find(|unit| unit.dimension == field.measure.dimension() && unit.si == 1.0);
        (*key, format!("{si} {}", unit.map_or("", |unit| unit.symbol)).trim_end().to_owned())
    };
    let inputs: Inputs = given.iter().map(written).collect();
    work(listed, &inputs)
        .map(|value| value.si)
        .map_err(|told| TestCaseError::fail(format!("{name}: {told:?}")))
}

fn near(ours: f64, theirs: f64) -> Result<(), TestCaseError> {
    if (ours - theirs).abs() <= 1e-9 * ours.abs().max(theirs.abs()) {
        Ok(())
    } else {
        Err(TestCaseError::fail(format!("{ours} is not {theirs}")))
    }
}

/// Holds a relation for figures somewhere in these ranges.
fn holds<const N: usize>(ranges: [(f64, f64); N], relation: impl Fn([f64; N]) -> Result<(), TestCaseError>) {
    let config = Config { cases: CASES, failure_persistence: None, ..Config::default() };
    let rng = TestRng::deterministic_rng(RngAlgorithm::ChaCha);
    let ranges = ranges.map(|(from, to)| from..to);
    TestRunner::new_with_rng(config, rng).run(&ranges, relation).unwrap_or_else(|failed| panic!("{failed}"));
}

#[test]
fn the_posts_of_a_bay_take_all_of_a_stretch_and_its_moment() {
    let (near_end, far_end) = ((0.0, 1.5), (1.6, 3.0));
    holds([near_end, far_end, (3.0, 5.0), (0.0, 3e3), (0.0, 3e3)], |[from, to, bay, first, last]| {
        let share = |from: f64, to: f64, first: f64, last: f64| {
            let given = [("near", from), ("far", to), ("load_near", first), ("load_far", last), ("bay", bay)];
            of("statics/post-share", &given)
        };
        let (left, right) = (share(from, to, first, last)?, share(bay - to, bay - from, last, first)?);
        near(left + right, (to - from) * (first + last) / 2.0)?;
        // Simpson's rule is exact for a straight load times its distance.
        let middle = (first + last) / 2.0 * (from + to) / 2.0;
        near(right * bay, (to - from) / 6.0 * (first * from + 4.0 * middle + last * to))
    });
}

#[test]
fn pressure_along_a_wall_in_case_b_keeps_its_mean_about_the_middle() {
    holds([(100.0, 3e3), (3.0, 30.0), (0.0, 1.0)], |[mean, length, place]| {
        let at = |distance: f64| {
            of("asce7-16/case-b-pressure", &[("mean", mean), ("distance", distance), ("length", length)])
        };
        near(at(place * length)? + at((1.0 - place) * length)?, 2.0 * mean)
    });
}

#[test]
fn a_tube_and_its_bore_make_a_bar_and_its_moduli_come_from_its_second_moment() {
    holds([(0.05, 0.1), (0.01, 0.049)], |[diameter, inner]| {
        let tube = |property: &str, diameter: f64, inner: f64| {
            of(&format!("section/tube-{property}"), &[("diameter", diameter), ("inner", inner)])
        };
        for property in ["area", "second-moment", "plastic-modulus"] {
            let bar = tube(property, diameter, 0.0)?;
            near(tube(property, diameter, inner)? + tube(property, inner, 0.0)?, bar)?;
        }
        let second = tube("second-moment", diameter, inner)?;
        near(tube("elastic-modulus", diameter, inner)? * diameter / 2.0, second)?;
        near(tube("radius-of-gyration", diameter, inner)?.powi(2) * tube("area", diameter, inner)?, second)
    });
}

#[test]
fn three_layers_are_as_solid_in_any_order() {
    holds([(0.0, 1.0), (0.0, 1.0), (0.0, 1.0)], |[one, two, three]| {
        let both = |first, second| of("screen/combined-solidity", &[("first", first), ("second", second)]);
        near(both(both(one, two)?, three)?, both(one, both(two, three)?)?)
    });
}

#[test]
fn the_chance_to_miss_a_wind_in_two_spans_is_the_product_of_both() {
    holds([(1.5, 3000.0), (1.0, 50.0), (1.0, 50.0)], |[years, one, two]| {
        let missed =
            |span| of("climate/encounter", &[("return_period", years), ("span", span)]).map(|met| 1.0 - met);
        near(missed(one)? * missed(two)?, missed(one + two)?)
    });
}

#[test]
fn a_speed_brought_to_another_return_period_by_way_of_a_third_is_the_same() {
    holds([(30.0, 70.0), (5.0, 3000.0), (5.0, 3000.0), (5.0, 3000.0)], |[speed, first, third, last]| {
        let brought = |speed, from, to| {
            let given = [("design", speed), ("design_return_period", from), ("return_period", to)];
            of("climate/asce-speed", &given)
        };
        near(brought(brought(speed, first, third)?, third, last)?, brought(speed, first, last)?)
    });
}

#[test]
fn a_wind_brought_to_another_averaging_time_by_way_of_a_third_is_the_same() {
    holds([(5.0, 40.0), (1.0, 3600.0), (1.0, 3600.0), (1.0, 3600.0)], |[speed, first, third, last]| {
        let brought = |speed, from, to| {
            of("climate/averaging-conversion", &[("speed", speed), ("from", from), ("to", to)])
        };
        near(brought(brought(speed, first, third)?, third, last)?, brought(speed, first, last)?)
    });
}

/// The law of the gusts is that of the monthly greatest winds whose scatter times 0.78 is a tenth of the 50-year gust.
#[test]
fn the_law_of_the_gusts_is_one_of_monthly_greatest_winds() {
    holds([(20.0, 60.0), (5.0, 3000.0)], |[fifty, years]| {
        let law =
            of("climate/asce-speed-from-fifty-year", &[("fifty_year", fifty), ("return_period", years)])?;
        let mean = (0.36 + 0.1 * 0.577) * fifty;
        let given = [("mean", mean), ("deviation", 0.1 * fifty / 0.78), ("return_period", years)];
        near(of("climate/monthly-maxima", &given)?, law)
    });
}

#[test]
fn the_editions_have_one_velocity_pressure_where_only_the_place_of_a_factor_differs() {
    holds(
        [(0.57, 1.2), (1.0, 2.0), (0.85, 1.0), (0.7, 1.0), (30.0, 80.0)],
        |[exposure, hill, direction, air, speed]| {
            let (exposure, hill) = (("exposure_coefficient", exposure), ("topographic_factor", hill));
            let (direction, air) = (("directionality", direction), ("elevation_factor", air));
            let (constant, speed) = (("constant", 0.613), ("speed", speed));
            let ours = of("asce7-16/velocity-pressure", &[constant, exposure, hill, direction, air, speed])?;
            near(of("asce7-16/velocity-pressure-si", &[exposure, hill, direction, air, speed])?, ours)?;
            let bare = of("asce7-22/velocity-pressure", &[constant, exposure, hill, air, speed])?;
            near(of("asce7-22/directed-pressure", &[("velocity_pressure", bare), direction])?, ours)?;
            let earlier = of("asce7-10/velocity-pressure", &[constant, exposure, hill, direction, speed])?;
            near(earlier * air.1, ours)
        },
    );
}

#[test]
fn at_its_limit_gust_a_part_has_a_ratio_of_one() {
    holds([(20.0, 80.0), (0.1, 10.0)], |[gust, ratio]| {
        let pressure = |speed| {
            let given = [
                ("constant", 0.613),
                ("exposure_coefficient", 0.85),
                ("topographic_factor", 1.0),
                ("directionality", 1.0),
                ("speed", speed),
            ];
            of("asce7-10/velocity-pressure", &given)
        };
        let limit = of("verdict/limit-gust", &[("gust", gust), ("ratio", ratio)])?;
        near(ratio * pressure(limit)? / pressure(gust)?, 1.0)
    });
}

#[test]
fn a_bay_of_mesh_and_its_post_are_the_mesh_and_the_post() {
    holds(
        [(200.0, 3e3), (1.2, 2.0), (0.05, 0.3), (2.0, 4.0), (0.04, 0.1)],
        |[q, coefficient, solidity, bay, post]| {
            let given = [
                ("pressure", q),
                ("coefficient", coefficient),
                ("solidity", solidity),
                ("bay", bay),
                ("diameter", post),
            ];
            let mesh = of(
                "loads/chain-link",
                &[("pressure", q * coefficient), ("solidity", solidity), ("height", bay)],
            )?;
            let own = of("loads/rail", &[("pressure", q * coefficient), ("diameter", post)])?;
            near(of("loads/mesh-and-post", &given)?, mesh + own)
        },
    );
}

#[test]
fn an_even_load_on_a_cantilever_is_its_force_at_half_the_height() {
    holds([(200.0, 3e3), (1.0, 4.0), (1.0, 4.0)], |[pressure, width, height]| {
        let force = of("loads/area-force", &[("pressure", pressure), ("area", width * height)])?;
        let load = of("loads/cloth", &[("pressure", pressure), ("height", width)])?;
        let moment = of("statics/base-moment", &[("force", force), ("arm", height / 2.0)])?;
        near(of("statics/cantilever-moment", &[("load", load), ("height", height)])?, moment)
    });
}

#[test]
fn the_design_moment_of_a_compact_tube_is_nine_tenths_of_its_yield_times_its_plastic_modulus() {
    holds([(0.05, 0.1), (0.003, 0.008), (170e6, 300e6)], |[diameter, wall, fy]| {
        let modulus = of("section/round-tube", &[("diameter", diameter), ("wall", wall)])?;
        let nominal =
            of("aisc360-16/tube-moment", &[("diameter", diameter), ("wall", wall), ("yield_strength", fy)])?;
        near(nominal, fy * modulus)?;
        let both = of("aisc360-16/f8-1-both-formats", &[("yield_strength", fy), ("modulus", modulus)])?;
        near(both, 0.9 * nominal)
    });
}
