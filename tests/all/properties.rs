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
//! | `length 300 to 700 ft matters` | changes with it, which way hangs on the others |
//! | `return_over_s 2 to 9 nothing` | is the same all over the range |
//! | `class of 1 2 3 falls` | the same for an input that is one of a few values |
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
//! Every entry is held to three things more that need no claim: worked from text in one system of units and in the
//! other the result is the same to 1e-12; an equation that is solved on the way has next to nothing left; and inputs
//! at nought, below it, minute or immense give a number or an error, never a step that is no number.
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
aisc360-16/allowable-compression
    nominal 1 to 100 kip ^1; safety 1.2 to 3 ^-1
    at safety 1 is 1 nominal
aisc360-16/allowable-moment
    nominal 1 to 20 kip-ft ^1; safety 1.2 to 3 ^-1
    at safety 1 is 1 nominal
aisc360-16/allowable-shear
    nominal 1 to 50 kip ^1; safety 1.2 to 3 ^-1
    at safety 1 is 1 nominal
aisc360-16/allowable-tension
    nominal 1 to 100 kip ^1; safety 1.2 to 3 ^-1
    at safety 1 is 1 nominal
aisc360-16/allowable-torsion
    nominal 1 to 20 kip-ft ^1; safety 1.2 to 3 ^-1
    at safety 1 is 1 nominal
aisc360-16/d2-1
    yield_strength 25 to 60 ksi ^1; area 0.4 to 8 in² ^1
    at yield_strength 10 ksi, area 2 in² is 20 kip
aisc360-16/design-compression
    resistance 0.5 to 1 ^1; nominal 1 to 100 kip ^1
    at resistance 1 is 1 nominal
aisc360-16/design-moment
    resistance 0.5 to 1 ^1; nominal 1 to 20 kip-ft ^1
    at resistance 1 is 1 nominal
aisc360-16/design-shear
    resistance 0.5 to 1 ^1; nominal 1 to 50 kip ^1
    at resistance 1 is 1 nominal
aisc360-16/design-tension
    resistance 0.5 to 1 ^1; nominal 1 to 100 kip ^1
    at resistance 1 is 1 nominal
aisc360-16/design-torsion
    resistance 0.5 to 1 ^1; nominal 1 to 20 kip-ft ^1
    at resistance 1 is 1 nominal
aisc360-16/design-wall
    nominal 0.05 to 0.4 in ^1
    at nominal 0.1 in is 0.093 in
aisc360-16/e2-length-ratio
    factor 0.65 to 2.1 ^1; length 5 to 15 ft ^1; radius 0.5 to 2 in ^-1
    at factor 2, length 10 ft, radius 1 in is 240
aisc360-16/e3-1
    stress 5 to 50 ksi ^1; area 0.4 to 8 in² ^1
    at stress 10 ksi, area 2 in² is 20 kip
aisc360-16/e3-2
    yield_strength 25 to 60 ksi rises; buckling 30 to 200 ksi rises
    at yield_strength 30 ksi, buckling 30 ksi is 0.658 yield_strength; at buckling 1e9 ksi nears 1 yield_strength
aisc360-16/e3-3
    buckling 5 to 30 ksi ^1
    at buckling 10 ksi is 8.77 ksi
aisc360-16/e3-4
    elastic 28000 to 30000 ksi ^1; ratio 50 to 300 ^-2
    at elastic 100 ksi, ratio 10 is 9.869604401089358 ksi
aisc360-16/e3-both-formats
    area 0.4 to 8 in² ^1; radius 0.5 to 2 in rises; yield_strength 25 to 60 ksi never falls
    factor 0.65 to 2.1 falls; length 5 to 15 ft falls
    at radius 0 in refused; at yield_strength 0 ksi refused; at factor 0 refused; at length 0 ft refused
aisc360-16/e3-limit
    elastic 28000 to 30000 ksi ^0.5; yield_strength 25 to 60 ksi ^-0.5
    at elastic 10000 ksi, yield_strength 1 ksi is 471
aisc360-16/e7-7
    elastic 28000 to 30000 ksi never falls; yield_strength 25 to 60 ksi never rises
    slenderness 20 to 400 never rises; area 0.4 to 8 in² ^1
    at slenderness 10 is 1 area
aisc360-16/e7-limit
    elastic 28000 to 30000 ksi ^1; yield_strength 25 to 60 ksi ^-1
    at elastic 1000 ksi, yield_strength 1 ksi is 110
aisc360-16/f7-1
    yield_strength 25 to 60 ksi ^1; modulus 0.2 to 9 in³ ^1
    at yield_strength 30 ksi, modulus 2 in³ is 60 kip-in
aisc360-16/f7-2
    plastic 180 to 200 kip-in never falls; yield_strength 40 to 46 ksi turns; modulus 3 to 3.5 in³ never falls
    slenderness 20 to 35 never rises; elastic 28000 to 30000 ksi never falls
    at slenderness 1 is 1 plastic
aisc360-16/f7-3
    yield_strength 25 to 60 ksi ^1; modulus 0.2 to 9 in³ ^1
    at yield_strength 30 ksi, modulus 2 in³ is 60 kip-in
# As it is asked, of slender flanges: wide beside their wall.
aisc360-16/f7-4
    wall 0.05 to 0.1 in rises; elastic 28000 to 30000 ksi rises; yield_strength 25 to 60 ksi falls
    flat 5 to 8 in rises
    at flat 1e9 in, wall 1 in, elastic 10000 ksi, yield_strength 1 ksi nears 192 in
aisc360-16/f7-6
    plastic 180 to 200 kip-in never falls; yield_strength 40 to 46 ksi turns; modulus 3 to 3.5 in³ never falls
    slenderness 50 to 120 never rises; elastic 28000 to 30000 ksi never falls
    at slenderness 1 is 1 plastic
aisc360-16/f7-both-formats
    plastic 2.3 to 2.4 in³ rises; elastic 2 to 2.05 in³ never falls; slenderness 28 to 38 never rises
    yield_strength 25 to 36 ksi rises
    at slenderness 10, plastic 2 in³, yield_strength 30 ksi is 54 kip-in; at slenderness 60 refused
    at slenderness -1 refused
aisc360-16/f7-effective-second-moment
    whole 5 to 10 in⁴ rises; flat 3 to 3.5 in falls; effective 2 to 2.9 in rises; wall 0.05 to 0.1 in falls
    width 4 to 5 in falls
    at flat 3 in, effective 3 in is 1 whole
aisc360-16/f7-flange-compact-limit
    modulus 28000 to 30000 ksi ^0.5; yield_strength 25 to 60 ksi ^-0.5
    at modulus 10000 ksi, yield_strength 1 ksi is 112
aisc360-16/f7-flange-noncompact-limit
    modulus 28000 to 30000 ksi ^0.5; yield_strength 25 to 60 ksi ^-0.5
    at modulus 10000 ksi, yield_strength 1 ksi is 140
aisc360-16/f7-web-compact-limit
    modulus 28000 to 30000 ksi ^0.5; yield_strength 25 to 60 ksi ^-0.5
    at modulus 10000 ksi, yield_strength 1 ksi is 242
aisc360-16/f7-web-noncompact-limit
    modulus 28000 to 30000 ksi ^0.5; yield_strength 25 to 60 ksi ^-0.5
    at modulus 10000 ksi, yield_strength 1 ksi is 570
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
aisc360-16/flat-width
    width 2 to 6 in rises; wall 0.05 to 0.4 in falls
    at wall 0 in is 1 width; at width 4 in, wall 0.5 in is 2.5 in
aisc360-16/flat-width-of-corner
    width 2 to 6 in rises; corner 0.1 to 0.8 in falls
    at corner 0 in is 1 width; at width 4 in, corner 0.5 in is 3 in
aisc360-16/g2-10
    elastic 28000 to 30000 ksi ^0.5; yield_strength 25 to 60 ksi ^-0.5; slenderness 60 to 120 ^-1
    at elastic 2000 ksi, yield_strength 1 ksi, slenderness 110 is 1
aisc360-16/g2-10-limit
    elastic 28000 to 30000 ksi ^0.5; yield_strength 25 to 60 ksi ^-0.5
    at elastic 2000 ksi, yield_strength 1 ksi is 137
aisc360-16/g2-11
    elastic 28000 to 30000 ksi ^1; yield_strength 25 to 60 ksi ^-1; slenderness 80 to 200 ^-2
    at elastic 2000 ksi, yield_strength 1 ksi, slenderness 100 is 1.51
aisc360-16/g2-9-limit
    elastic 28000 to 30000 ksi ^0.5; yield_strength 25 to 60 ksi ^-0.5
    at elastic 2000 ksi, yield_strength 1 ksi is 110
aisc360-16/g4-1
    yield_strength 25 to 60 ksi ^1; area 0.2 to 3 in² ^1; coefficient 0.3 to 1 ^1
    at yield_strength 50 ksi, area 1 in², coefficient 1 is 30 kip
aisc360-16/g4-web-area
    flat 1 to 4 in ^1; wall 0.05 to 0.3 in ^1
    at flat 3 in, wall 0.1 in is 0.6 in²
aisc360-16/g5-1
    stress 5 to 36 ksi ^1; area 0.4 to 8 in² ^1
    at stress 10 ksi, area 2 in² is 10 kip
aisc360-16/g5-2
    elastic 28000 to 30000 ksi never falls; length 5 to 15 ft never rises; diameter 2 to 4 in never falls
    slenderness 20 to 400 never rises; yield_strength 25 to 60 ksi never falls
    at slenderness 10, elastic 29000 ksi is 0.6 yield_strength
aisc360-16/h1-1a
    axial 0.2 to 1 rises; one 0 to 1 rises; other 0 to 1 rises
    swap one other; at one 0, other 0 is 1 axial; at axial 0.2, one 0.9, other 0 is 1
aisc360-16/h1-1b
    axial 0 to 0.2 rises; one 0 to 1 rises; other 0 to 1 rises
    swap one other; at one 0, other 0 is 0.5 axial; at axial 0.2, one 0.9, other 0 is 1
aisc360-16/h3-1
    stress 5 to 36 ksi ^1; constant 0.5 to 10 in³ ^1
    at stress 10 ksi, constant 2 in³ is 20 kip-in
aisc360-16/h3-2
    of_length 5 to 60 ksi never falls; of_any 5 to 60 ksi never falls; yield_strength 25 to 60 ksi never falls
    swap of_length of_any; at of_length 100 ksi is 0.6 yield_strength
    at of_length 0 ksi, yield_strength 1000 ksi is 1 of_any
aisc360-16/h3-2a
    elastic 28000 to 30000 ksi ^1; length 5 to 15 ft ^-0.5; diameter 2 to 4 in ^0.5; slenderness 10 to 400 ^-1.25
    at elastic 1000 ksi, length 4 in, diameter 1 in, slenderness 1 is 615 ksi
aisc360-16/h3-2b
    elastic 28000 to 30000 ksi ^1; slenderness 10 to 400 ^-1.5
    at elastic 1000 ksi, slenderness 100 is 0.6 ksi
aisc360-16/h3-3
    yield_strength 25 to 60 ksi ^1
    at yield_strength 50 ksi is 30 ksi
aisc360-16/h3-3-both-formats
    yield_strength 25 to 60 ksi ^1; constant 0.5 to 10 in³ ^1
    at yield_strength 50 ksi, constant 1 in³ is 27 kip-in
aisc360-16/h3-4
    elastic 28000 to 30000 ksi ^0.5; yield_strength 25 to 60 ksi ^0.5; slenderness 60 to 90 ^-1
    at elastic 10000 ksi, yield_strength 1 ksi, slenderness 245 is 0.6 ksi
aisc360-16/h3-5
    elastic 28000 to 30000 ksi ^1; slenderness 80 to 260 ^-2
    at elastic 1000 ksi, slenderness 10 is 45.20278815698926 ksi
aisc360-16/h3-6
    axial 0 to 1 rises; bending 0 to 1 rises; shear 0 to 1 rises; torsion 0 to 1 rises
    swap axial bending; swap shear torsion; at shear 0, torsion 0, bending 0 is 1 axial
    at axial 0.25, bending 0.5, shear 0.3, torsion 0.2 is 1
aisc360-16/h3-both-formats
    diameter 2 to 4 in never rises; wall 0.01 to 0.1 in never falls; length 5 to 15 ft never rises
    yield_strength 25 to 60 ksi never falls; constant 0.5 to 10 in³ ^1
    at diameter 4 in, wall 0.4 in, yield_strength 50 ksi, constant 1 in³ is 27 kip-in; at diameter 0 in refused
    at length 0 ft refused; at wall 0 in refused
aisc360-16/h3-closed-form-rectangular
    width 2 to 6 in rises; height 2 to 6 in rises; wall 0.1 to 0.3 in rises
    swap width height; at wall 0 in is 0 in³
aisc360-16/h3-closed-form-round
    diameter 2 to 4 in rises; wall 0.1 to 0.3 in rises
    at diameter 2 in, wall 0 in is 0 in³; at diameter 11 in, wall 1 in is 157.07963267948966 in³
aisc360-16/square-tube-both-formats
    width 2 to 4 in rises; wall 0.15 to 0.3 in rises; yield_strength 25 to 46 ksi ^1
    at width 0 in refused; at wall 0 in refused; at width 2 in, wall 0.51 in refused
aisc360-16/square-tube-moment
    width 2 to 4 in rises; wall 0.15 to 0.3 in rises; yield_strength 25 to 46 ksi ^1
    at width 0 in refused; at wall 0 in refused; at width 2 in, wall 0.51 in refused
aisc360-16/square-tube-shear
    width 2 to 6 in rises; wall 0.1 to 0.4 in rises; yield_strength 25 to 60 ksi ^1
    at width 0 in refused; at wall 0 in refused; at width 2 in, wall 0.51 in refused
    at width 4 in, wall 0.5 in, yield_strength 50 ksi is 75 kip
aisc360-16/tube-moment
    diameter 2 to 4 in rises; wall 0.1 to 0.3 in rises; yield_strength 25 to 46 ksi ^1
    at diameter 6 in, wall 3 in, yield_strength 30 ksi is 1080 kip-in; at diameter 0 in refused
    at wall 0 in refused; at diameter 2 in, wall 1.01 in refused; at diameter 4 in, wall 0.004 in refused
aisi-s100-16/allowable-moment
    nominal 1 to 20 kip-ft ^1; safety 1.2 to 3 ^-1
    at safety 1 is 1 nominal
aisi-s100-16/design-moment
    resistance 0.5 to 1 ^1; nominal 1 to 20 kip-ft ^1
    at resistance 1 is 1 nominal
aisi-s100-16/first-yield
    modulus 0.2 to 9 in³ ^1; yield_strength 25 to 60 ksi ^1
    at yield_strength 30 ksi, modulus 2 in³ is 60 kip-in
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
asce7-16/hill-constant
    shape of 1 2 3 turns; column of 1 2 3 4 5 6 turns
    at shape 1, column 1 is 1.3; at shape 2, column 6 is 4; at shape 3, column 4 is 4; at shape 0 refused
    at shape 4 refused; at column 7 refused; at column 1.5 refused
asce7-16/hill-distance-factor
    distance 0 to 500 ft never rises; constant 1.5 to 4 never falls; reach 50 to 1000 ft never falls
    at distance 0 ft is 1; at distance 10000 ft is 0; at distance 150 ft, constant 1.5, reach 200 ft is 0.5
asce7-16/hill-level-factor
    level 1 to 50 ft falls; constant 2.5 to 4 falls; reach 50 to 1000 ft rises
    at level 0 ft is 1; at level 1e6 ft, reach 100 ft is 0
asce7-16/hill-reach
    half_length 50 to 500 ft never falls; height 20 to 200 ft never falls
    at height 0 ft is 1 half_length; at half_length 100 ft, height 100 ft is 200 ft
asce7-16/hill-shape-factor
    constant 0.75 to 1.55 ^1; height 20 to 200 ft never falls; half_length 50 to 1000 ft never rises
    at height 0 ft is 0; at height 100 ft, half_length 100 ft is 0.5 constant
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
asce7-16/topographic-factor
    shape 0.1 to 0.8 rises; distance 0.1 to 1 rises; level 0.1 to 1 rises
    swap distance level; swap shape level; at shape 0 is 1; at shape 0.5, distance 1, level 1 is 2.25
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
    at s_over_h 0.01, b_over_s 0.01 is 1.95; at s_over_h 1, b_over_s 45 is 1.3; at s_over_h 1, b_over_s 1e9 is 1.3
    at s_over_h 1.01 refused; at s_over_h 0 refused; at b_over_s 0 refused
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
beam/cantilever-even-tip
    load 5 to 200 lb/ft ^1; length 3 to 20 ft ^4; elastic 28000 to 30000 ksi ^-1; second_moment 0.5 to 10 in⁴ ^-1
    at load 8 N/m, length 1 m, elastic 1 Pa, second_moment 1 m⁴ is 1 m
beam/cantilever-falling-moment
    load 5 to 200 lb/ft ^1; length 3 to 20 ft ^2
    at load 6 N/m, length 2 m is 4 N m
beam/cantilever-falling-tip
    load 5 to 200 lb/ft ^1; length 3 to 20 ft ^4; elastic 28000 to 30000 ksi ^-1; second_moment 0.5 to 10 in⁴ ^-1
    at load 30 N/m, length 1 m, elastic 1 Pa, second_moment 1 m⁴ is 1 m
beam/cantilever-growing-moment
    load 5 to 200 lb/ft ^1; length 3 to 20 ft ^2
    at load 3 N/m, length 2 m is 4 N m
beam/cantilever-growing-tip
    load 5 to 200 lb/ft ^1; length 3 to 20 ft ^4; elastic 28000 to 30000 ksi ^-1; second_moment 0.5 to 10 in⁴ ^-1
    at load 120 N/m, length 1 m, elastic 1 Pa, second_moment 1 m⁴ is 11 m
beam/cantilever-part-moment
    load 5 to 200 lb/ft ^1; from 0 to 3 ft falls; to 4 to 10 ft rises
    at from 0 ft, load 2 N/m, to 2 m is 4 N m; at from 5 ft, to 5 ft is 0 lb-ft
beam/cantilever-part-tip
    load 5 to 200 lb/ft ^1; from 0 to 3 ft falls; to 4 to 10 ft rises; length 11 to 20 ft rises
    elastic 28000 to 30000 ksi ^-1; second_moment 0.5 to 10 in⁴ ^-1
    at from 5 ft, to 5 ft is 0 in
    at from 0 m, to 1 m, length 1 m, load 8 N/m, elastic 1 Pa, second_moment 1 m⁴ is 1 m
beam/cantilever-spring-tip
    fixed 0.1 to 3 in rises; moment 1 to 30 kip-ft rises; length 3 to 20 ft rises; stiffness 50 to 1000 kip-ft falls
    at moment 0 kip-ft is 1 fixed; at fixed 0 in, moment 1 N m, length 4 m, stiffness 2 N m is 2 m
beam/cantilever-trapezoid-moment
    foot 5 to 200 lb/ft rises; tip 5 to 200 lb/ft rises; length 3 to 20 ft ^2
    at foot 6 N/m, tip 6 N/m, length 1 m is 3 N m; at foot 0 N/m, tip 3 N/m, length 1 m is 1 N m
beam/cantilever-trapezoid-tip
    foot 5 to 200 lb/ft rises; tip 5 to 200 lb/ft rises; length 3 to 20 ft ^4; elastic 28000 to 30000 ksi ^-1
    second_moment 0.5 to 10 in⁴ ^-1
    at foot 8 N/m, tip 8 N/m, length 1 m, elastic 1 Pa, second_moment 1 m⁴ is 1 m
    at foot 30 N/m, tip 0 N/m, length 1 m, elastic 1 Pa, second_moment 1 m⁴ is 1 m
beam/equal-spans-reaction
    spans of 3 4 5 turns; support of 1 2 3 4 turns
    at spans 1, support 1 is 0.5; at spans 2, support 2 is 1.25; at spans 3, support 1 is 0.4
    at spans 3, support 5 refused
beam/equal-spans-sag
    shear 0.3 to 0.7 rises; left 0 to 0.12 falls
    at shear 0.5, left 0 is 0.125
beam/equal-spans-shear
    left 0 to 0.12 rises; right 0 to 0.12 falls
    at left 0, right 0 is 0.5; at left 0.1, right 0.1 is 0.5
beam/equal-spans-span-moment
    spans of 3 4 5 turns; span of 1 2 3 turns
    at spans 1, span 1 is 0.125; at spans 2, span 1 is 0.0703125; at spans 3, span 2 is 0.025
    at spans 3, span 4 refused
beam/equal-spans-support-moment
    spans of 3 4 5 turns; support of 1 2 3 4 turns
    at spans 2, support 2 is 0.125; at spans 3, support 2 is 0.1; at spans 5, support 1 is 0
    at spans 3, support 5 refused; at spans 2.5 refused
beam/euler-load
    elastic 28000 to 30000 ksi ^1; second_moment 0.5 to 10 in⁴ ^1; factor 0.7 to 2.1 ^-2; length 3 to 20 ft ^-2
    at elastic 1 Pa, second_moment 1 m⁴, factor 2, length 0.5 m is 9.869604401089358 N
beam/load-moment
    coefficient 0.05 to 0.125 ^1; load 5 to 200 lb/ft ^1; span 8 to 12 ft ^2
    at coefficient 0.125, load 8 lb/ft, span 10 ft is 100 lb-ft
beam/p-delta-growth
    force 10 to 900 lbf rises; buckling 1 to 50 kip falls
    at force 0 lbf is 1; at force 1 kip, buckling 2 kip is 2; at force 2 kip, buckling 2 kip refused
    at force -1 lbf refused
beam/p-delta-moment
    moment 1 to 30 kip-ft rises; force 10 to 900 lbf rises; deflection 0.1 to 5 in rises
    at force 0 lbf is 1 moment; at moment 0 kip-ft, force 100 lbf, deflection 6 in is 50 lb-ft
beam/p-delta-tip-load-deflection
    side 10 to 500 lbf ^1; force 10 to 900 lbf rises; length 5 to 10 ft rises; elastic 28000 to 30000 ksi falls
    second_moment 1 to 10 in⁴ falls
    at force 0.01 N, side 3 N, length 1 m, elastic 1000 Pa, second_moment 1 m⁴ nears 0.001 m
    at force -1 lbf refused
beam/p-delta-tip-load-moment
    side 10 to 500 lbf ^1; force 10 to 900 lbf rises; length 5 to 10 ft rises; elastic 28000 to 30000 ksi falls
    second_moment 1 to 10 in⁴ falls
    at force 0.01 N, side 3 N, length 2 m, elastic 1000 Pa, second_moment 1 m⁴ nears 6 N m; at force -1 lbf refused
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
    at design_return_period 4 years refused; at return_period 4 years refused; at return_period 3001 years refused
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
climate/nominal-speed
    ultimate 90 to 180 mph ^1; share 0.5 to 1 ^0.5
    at share 1 is 1 ultimate; at share 0.25 is 0.5 ultimate
climate/over-fifty-year
    speed 30 to 180 mph ^1; design 80 to 180 mph ^-1; design_ratio 1 to 1.5 ^1
    at speed 115 mph, design 115 mph is 1 design_ratio
climate/scaled-speed
    design 80 to 180 mph ^1; ratio 0.7 to 1.5 ^1; design_ratio 1 to 1.5 ^-1
    at ratio 1, design_ratio 1 is 1 design
en1993-1-1/6-10
    area 2 to 20 cm² ^1; yield_strength 200 to 460 MPa ^1; partial 1 to 1.1 ^-1
    at area 10 cm², yield_strength 235 MPa, partial 1 is 235 kN
en1993-1-1/6-13
    modulus 5 to 100 cm³ ^1; yield_strength 200 to 460 MPa ^1; partial 1 to 1.1 ^-1
    at modulus 10 cm³, yield_strength 235 MPa, partial 1 is 2350 N m
en1993-1-1/6-14
    modulus 5 to 100 cm³ ^1; yield_strength 200 to 460 MPa ^1; partial 1 to 1.1 ^-1
    at modulus 10 cm³, yield_strength 235 MPa, partial 1 is 2350 N m
en1993-1-1/6-18
    area 1 to 10 cm² ^1; yield_strength 200 to 460 MPa ^1; partial 1 to 1.1 ^-1
    at area 10 cm², yield_strength 173.20508075688772 MPa, partial 1 is 100 kN
en1993-1-1/6-29
    shear 0.5 to 1 rises
    at shear 0.5 is 0; at shear 1 is 1; at shear 0.75 is 0.25
en1993-1-1/epsilon
    reference 200 to 250 MPa ^0.5; yield_strength 200 to 460 MPa ^-0.5
    at reference 235 MPa, yield_strength 235 MPa is 1
en1993-1-1/round-class
    diameter 40 to 58 mm never falls; wall 1 to 1.3 mm never rises; yield_strength 235 to 355 MPa never falls
    at diameter 50 mm, wall 1 mm, yield_strength 235 MPa is 1
    at diameter 70 mm, wall 1 mm, yield_strength 235 MPa is 2
    at diameter 90 mm, wall 1 mm, yield_strength 235 MPa is 3
    at diameter 91 mm, wall 1 mm, yield_strength 235 MPa refused; at wall 0 mm refused; at diameter 0 mm refused
en1993-1-1/round-class-1
    epsilon 0.7 to 1.1 ^2
    at epsilon 1 is 50
en1993-1-1/round-class-2
    epsilon 0.7 to 1.1 ^2
    at epsilon 1 is 70
en1993-1-1/round-class-3
    epsilon 0.7 to 1.1 ^2
    at epsilon 1 is 90
en1993-1-1/round-shear-area
    area 2 to 20 cm² ^1
    at area 3.141592653589793 cm² is 2 cm²
en1993-1-1/round-tube
    diameter 60 to 115 mm rises; wall 3 to 6 mm rises; yield_strength 235 to 355 MPa ^1
    at diameter 60 mm, wall 30 mm, yield_strength 250 MPa is 9000 N m; at diameter 0 mm refused
    at wall 0 mm refused
en1993-1-1/square-shear-area
    area 2 to 20 cm² ^1
    at area 3 cm² is 1.5 cm²
fastening/arc-angle
    load 1 to 40 lb/ft rises; span 8 to 12 ft rises; stiffness 1000 to 20000 lbf falls; slack -0.02 to 0.2 rises
    at stiffness 0 lbf refused; at slack -1 refused; at load 0 lb/ft refused; at span 0 ft refused
fastening/arc-in-plane
    tension 50 to 2000 lbf ^1; angle 0 to 85 ° falls
    at angle 0 ° is 1 tension; at angle 60 ° is 0.5 tension
fastening/arc-radius
    span 8 to 12 ft ^1; angle 10 to 90 ° falls
    at angle 90 ° is 0.5 span; at angle 30 ° is 1 span
# A round of the method stands still at the root: cloth without load and slack by a quarter circle.
fastening/arc-round
    load 5 to 60 lb/ft rises; span 8 to 12 ft rises; stiffness 500 to 20000 lbf falls; slack 0.01 to 0.1 rises
    guess 40 to 80 ° turns
    at load 0 lb/ft, guess 90 °, slack 0.5707963267948966 is 1.5707963267948966 rad
fastening/arc-sag
    radius 5 to 50 ft ^1; angle 5 to 90 ° rises
    at angle 0 ° is 0 ft; at angle 60 ° is 0.5 radius; at angle 90 ° is 1 radius
fastening/arc-tension
    load 1 to 60 lb/ft ^1; radius 5 to 50 ft ^1
    at load 10 lb/ft, radius 20 ft is 200 lbf
fastening/bs8410-tie
    nominal 10 to 500 lbf ^1
    at nominal 50 lbf is 100 lbf
fastening/cable-length
    span 8 to 12 ft rises; sag 0.2 to 3 ft rises
    at sag 0.001 ft nears 1 span; at sag 0 ft gives no number
# A round of the method stands still at the root: with no slack, T³ = EA w²L²/24.
fastening/cable-round
    load 1 to 60 lb/ft rises; span 8 to 12 ft rises; stiffness 500 to 5000 lbf turns; slack 0 to 0.05 falls
    guess 50 to 1000 lbf turns
    at load 24 lb/ft, span 1 ft, stiffness 24 lbf, slack 0, guess 8.320335292207616 lbf is 8.320335292207616 lbf
fastening/cable-tension
    load 1 to 60 lb/ft rises; span 8 to 12 ft rises; stiffness 500 to 20000 lbf rises; slack -0.02 to 0.1 falls
    at load 24 lb/ft, span 1 ft, stiffness 24 lbf, slack 0 is 8.320335292207616 lbf; at slack -1 refused
    at stiffness 0 lbf refused
fastening/cloth-area
    length 5 to 400 ft ^1; height 3 to 12 ft ^1
    swap length height; at length 10 ft, height 9 ft is 90 ft²
fastening/cut-length
    opening 5 to 60 ft rises; gap 0 to 1 ft falls
    at gap 0 ft is 1 opening; at opening 10 ft, gap 6 in is 9 ft
fastening/edge-force
    load 1 to 60 lb/ft rises; span 8 to 12 ft rises; tension 50 to 2000 lbf rises
    at load 0 lb/ft is 1 tension; at load 6 lb/ft, span 10 ft, tension 40 lbf is 50 lbf
fastening/edge-force-of-sag
    load 1 to 60 lb/ft ^1; span 8 to 12 ft rises; sag 0.2 to 1.2 ft falls
    at sag 0 ft refused; at load 8 lb/ft, span 10 ft, sag 10/3 ft is 50 lbf
fastening/exact-arc
    load 5 to 40 lb/ft rises; span 8 to 12 ft rises; stiffness 1000 to 20000 lbf rises; slack -0.02 to 0.2 falls
    at stiffness 0 lbf refused; at slack -1 refused; at load 0 lb/ft refused; at span 0 ft refused
fastening/half-circle-slack
    load 1 to 60 lb/ft falls; span 8 to 12 ft falls; stiffness 500 to 20000 lbf rises
    at load 0 lb/ft is 0.5707963267948966; at load 24 lb/ft, span 1 ft, stiffness 12 lbf is -0.2146018366025517
fastening/hem-length
    length 5 to 60 ft rises; height 3 to 12 ft rises; bands 0 to 3 rises
    at length 10 ft, height 9 ft, bands 0 is 38 ft; at length 10 ft, height 9 ft, bands 1 is 48 ft
fastening/in-plane-pull
    per_width 1 to 200 lb/ft ^1; height 3 to 12 ft ^1
    at per_width 10 lb/ft, height 9 ft is 90 lbf
fastening/kept-strength
    declared 10 to 500 lbf ^1; kept 10 to 100 % ^1
    at kept 100 % is 1 declared; at kept 50 % is 0.5 declared
fastening/knotted-rope
    breaking 100 to 3000 lbf ^1; loss 0 to 90 % falls
    at loss 0 % is 1 breaking; at loss 50 % is 0.5 breaking; at loss 100 % is 0 lbf
fastening/lacing-locked
    spacing 6 to 24 in falls; wrap 3 to 12 in rises
    at wrap 0 in is 1; at spacing 4 in, wrap 3 in is 2.75
fastening/lacing-of-rail
    rail 1 to 3 in rises; rope 0.1 to 0.5 in rises; offset 0.1 to 1 in rises; spacing 6 to 24 in falls
fastening/lacing-plain
    spacing 6 to 24 in falls; wrap 3 to 12 in rises
    at wrap 0 in is 1; at spacing 4 in, wrap 3 in is 1.25
fastening/lacing-tension
    pull 10 to 200 lbf ^1; spacing 6 to 24 in rises; wrap 3 to 12 in falls; radius 0.5 to 2 in rises
    offset 0.2 to 1 in falls
    at radius 0 in, spacing 0 in is 0.5 pull; at wrap 0 in gives no number; at offset 0 in gives no number
# Sizes are listed; between two the strength of the lesser is not given.
fastening/manila-rope
    diameter of 0.25 0.3125 0.375 0.4375 0.5 0.5625 0.625 0.75 in rises
    at diameter 0.25 in is 540 lbf; at diameter 0.75 in is 4860 lbf; at diameter 0.3 in refused
    at diameter 2 in refused; at diameter 0 in refused
fastening/multiplied-pull
    pull 10 to 500 lbf ^1; multiplier 0.5 to 5 ^1
    at multiplier 1 is 1 pull
fastening/neighbour-load
    own 10 to 100 lbf rises; spread 1.2 to 2 rises; lost 10 to 200 lbf rises
    at lost 0 lbf is 1 own; at spread 1 is 1 own; at own 10 lbf, spread 1.5, lost 20 lbf is 20 lbf
fastening/nylon-rope
    diameter of 0.1875 0.25 0.3125 0.375 0.4375 0.5 0.5625 0.625 0.75 in rises
    at diameter 0.1875 in is 900 lbf; at diameter 0.75 in is 12800 lbf; at diameter 0.3 in refused
    at diameter 2 in refused; at diameter 0 in refused
fastening/panel-count
    length 60 to 400 ft never falls; longest 20 to 60 ft never rises
    at length 100 ft, longest 50 ft is 2; at length 101 ft, longest 50 ft is 3; at longest 0 ft refused
fastening/panel-length
    length 5 to 400 ft ^1; panels 1 to 8 ^-1
    at panels 1 is 1 length; at panels 0 gives no number
fastening/per-width
    force 10 to 2000 lbf ^1; width 0.5 to 12 ft ^-1
    at force 100 lbf, width 4 ft is 25 lb/ft; at width 0 ft gives no number
# The least of three tables.
fastening/polypropylene-rope
    diameter of 0.1875 0.25 0.3125 0.375 0.4375 0.5 0.5625 0.625 0.75 0.875 1 in rises
    at diameter 0.1875 in is 720 lbf; at diameter 1 in is 12825 lbf; at diameter 0.3 in refused
    at diameter 2 in refused; at diameter 0 in refused
fastening/pull-to-strength
    pull 10 to 500 lbf ^-1; strength 10 to 500 lbf ^1
    at pull 20 lbf, strength 50 lbf is 2.5; at pull 0 lbf gives no number
fastening/rail-load
    pressure 5 to 60 psf ^1; strip 1 to 6 ft ^1
    at pressure 10 psf, strip 4 ft is 40 lb/ft
fastening/rail-moment-beside-splice
    load 5 to 200 lb/ft ^1; span 8 to 12 ft ^2
    at load 8 lb/ft, span 10 ft is 100 lb-ft
fastening/rail-moment-inside
    load 5 to 200 lb/ft ^1; span 8 to 12 ft ^2
    at load 10 lb/ft, span 10 ft is 107 lb-ft
fastening/rail-shear-beside-splice
    load 5 to 200 lb/ft ^1; span 8 to 12 ft ^1
    at load 10 lb/ft, span 10 ft is 50 lbf
fastening/rail-shear-inside
    load 5 to 200 lb/ft ^1; span 8 to 12 ft ^1
    at load 28 lb/ft, span 10 ft is 170 lbf
fastening/ratio
    demand 10 to 500 lbf ^1; capacity 10 to 500 lbf ^-1
    at demand 0 lbf is 0; at capacity 0 lbf gives no number
fastening/rest-tension
    stiffness 500 to 20000 lbf rises; slack -0.05 to -0.001 falls
    at slack 0 is 0 lbf; at slack -0.01, stiffness 1000 lbf is 10 lbf
fastening/rope-by-girth
    manila 0.5 to 2 ksi ^1; comparison 1 to 3 ^1; girth 0.5 to 3 in ^2
    at manila 1 ksi, comparison 1, girth 2 in is 4 kip
fastening/rope-girth
    diameter 0.1 to 1 in ^1
    at diameter 10 in is 31.41592653589793 in
fastening/rope-length
    edges 10 to 400 ft rises; per_length 1 to 3 rises; ends 2 to 20 rises; tail 0.5 to 3 ft rises
    waste 0 to 15 % rises
    at waste 0 %, ends 0, per_length 1 is 1 edges
    at waste 10 %, edges 100 ft, per_length 2, ends 4, tail 5 ft is 242 ft
fastening/rope-working-load
    breaking 100 to 3000 lbf ^1; factor 3 to 12 ^-1
    at factor 1 is 1 breaking; at factor 0 gives no number
fastening/row-strip
    above 1 to 6 ft rises; below 1 to 6 ft rises; loose 0 to 1 ft rises
    swap above below; at above 4 ft, below 2 ft, loose 0 ft is 3 ft
fastening/sag-of-slack
    slack 0.001 to 0.1 ^0.5; span 8 to 12 ft ^1
    at slack 0 is 0 ft; at slack 0.375, span 8 ft is 3 ft; at slack -0.1 gives no number
fastening/sag-of-tension
    load 1 to 60 lb/ft ^1; span 8 to 12 ft ^2; tension 50 to 2000 lbf ^-1
    at load 8 lb/ft, span 10 ft, tension 100 lbf is 1 ft; at tension 0 lbf gives no number
fastening/side-strip
    length 2 to 60 ft never falls; reach 1 to 6 ft never falls
    at length 100 ft is 1 reach; at length 1 ft is 0.5 ft
fastening/slack-of-length
    cloth 10.1 to 11 ft rises; span 8 to 10 ft falls
    at cloth 10 ft, span 10 ft is 0; at cloth 10.1 ft, span 10 ft is 0.01; at span 0 ft gives no number
fastening/slack-of-pretension
    pretension 1 to 20 lb/ft falls; cloth 100 to 5000 lb/ft rises
    at pretension 0 lb/ft is 0; at pretension 5 lb/ft, cloth 500 lb/ft is -0.01
fastening/slack-of-sag
    sag 0.05 to 1 ft ^2; span 8 to 12 ft ^-2
    at sag 0 ft is 0; at sag 3 ft, span 8 ft is 0.375
fastening/spaces
    edge 5 to 60 ft never falls; spacing 6 to 24 in never rises
    at edge 10 ft, spacing 12 in is 10; at edge 10.01 ft, spacing 12 in is 11; at edge 1 ft, spacing 2 ft is 1
    at spacing 0 ft refused
fastening/stiff-tension
    load 1 to 60 lb/ft ^1; span 8 to 12 ft ^1; slack 0.001 to 0.1 ^-0.5
    at load 10 lb/ft, span 10 ft, slack 1/24 is 100 lbf; at slack 0 gives no number
fastening/strip-load
    pressure 5 to 60 psf ^1; width 0.5 to 12 ft ^1
    at pressure 10 psf, width 3 ft is 30 lb/ft
fastening/strip-stiffness
    cloth 100 to 5000 lb/ft ^1; width 0.5 to 12 ft ^1
    at cloth 100 lb/ft, width 3 ft is 300 lbf
fastening/taut-tension
    load 1 to 60 lb/ft ^0.6666666666666667; span 8 to 12 ft ^0.6666666666666667
    stiffness 500 to 20000 lbf ^0.3333333333333333
    at load 24 lb/ft, span 1 ft, stiffness 24 lbf is 8.320335292207616 lbf
fastening/tension-of-sag
    load 1 to 60 lb/ft ^1; span 8 to 12 ft ^2; sag 0.2 to 1.2 ft ^-1
    at load 8 lb/ft, span 10 ft, sag 1 ft is 100 lbf; at sag 0 ft gives no number
fastening/tie-count
    rows 1 to 4 rises; along 5 to 50 rises; uprights 0 to 4 rises; up 4 to 12 rises; shared 0 to 2 falls
    at rows 2, along 10, uprights 0 is 22; at rows 2, along 10, uprights 2, up 6, shared 2 is 32
fastening/tie-pull
    pressure 5 to 60 psf ^1; spacing 0.5 to 2 ft ^1; strip 0.5 to 6 ft ^1
    swap spacing strip; at pressure 10 psf, spacing 1 ft, strip 4 ft is 40 lbf
fastening/ties-on-four-edges
    length 5 to 60 ft never falls; height 3 to 12 ft never falls; spacing 6 to 24 in never rises
    swap length height; at length 10 ft, height 6 ft, spacing 12 in is 32; at spacing 0 ft refused
fastening/weathered-rope
    breaking 100 to 3000 lbf ^1; loss 5 to 30 % falls; years 0.5 to 8 years falls
    at years 0 years is 1 breaking; at loss 0 % is 1 breaking; at loss 20 %, years 2 years is 0.64 breaking
fastening/wire-breaking
    strength 40 to 100 ksi ^1; diameter 0.1 to 0.2 in ^2
    at strength 10 ksi, diameter 2 in is 31.41592653589793 kip
fastening/with-spares
    count 10 to 500 never falls; spares 0 to 15 % never falls
    at count 100, spares 0 % is 100; at count 100, spares 5 % is 105; at count 101, spares 5 % is 107
    at count -1 refused; at spares -1 % refused
fastening/wrap-length
    radius 0.5 to 2 in rises; offset 0.1 to 1 in rises
    at radius 1 in, offset 0 in is 6.283185307179586 in; at radius 0 in is 2 offset
fastening/wrap-radius
    rail 1 to 3 in rises; rope 0.1 to 0.5 in rises
    at rope 0 in is 0.5 rail; at rail 2 in, rope 0.5 in is 1.25 in
footing/brinch-hansen
    force 500 to 3000 lbf rises; height 1 to 10 ft rises; width 0.5 to 2 ft falls; cohesion 100 to 2000 psf falls
    angle 5 to 40 ° falls; weight 60 to 130 psf/ft falls
    at force 0 lbf refused; at height -1 ft refused; at width 0 ft refused
footing/brinch-hansen-capacity
    depth 3 to 8 ft rises; height 1 to 10 ft falls; width 0.5 to 2 ft rises; cohesion 100 to 2000 psf rises
    angle 5 to 40 ° rises; weight 60 to 130 psf/ft rises
    at height -1 ft refused; at width 0 ft refused; at angle -1 ° refused; at cohesion -1 psf refused
    at weight 0 psf/ft refused; at angle 51 ° refused
footing/brinch-hansen-moment
    force 2000 to 4000 lbf rises; height 1 to 10 ft rises; width 0.5 to 1 ft falls; cohesion 100 to 1000 psf falls
    angle 5 to 35 ° falls; weight 60 to 130 psf/ft falls
    at height -1 ft refused; at width 0 ft refused
footing/brinch-hansen-rotation
    depth 3 to 8 ft rises; height 1 to 10 ft falls; width 0.5 to 2 ft turns; cohesion 100 to 2000 psf falls
    angle 5 to 40 ° rises; weight 60 to 130 psf/ft rises
footing/broms-clay
    force 200 to 3000 lbf rises; height 1 to 10 ft rises; width 0.5 to 2 ft turns; strength 500 to 3000 psf falls
    at force 0 lbf refused; at height -1 ft refused; at width 0 ft refused; at strength 0 psf refused
footing/broms-clay-capacity
    depth 4 to 10 ft rises; height 1 to 10 ft falls; width 0.5 to 2 ft turns; strength 500 to 3000 psf ^1
    at depth 1 ft, width 1 ft is 0 lbf; at height -1 ft refused; at width 0 ft refused; at strength 0 psf refused
footing/broms-clay-force
    strength 500 to 3000 psf ^1; width 0.5 to 2 ft ^1; arm 1 to 10 ft falls; length 1 to 8 ft rises
    at length 0 ft is 0 lbf; at arm 0 ft, strength 100 psf, width 1 ft, length 2.414213562373095 ft is 900 lbf
footing/broms-clay-moment
    force 200 to 3000 lbf ^1; height 1 to 10 ft rises; width 0.5 to 2 ft rises; length 0.1 to 1 ft rises
    at height 5 ft, width 2 ft, length 4 ft, force 100 lbf is 1000 lb-ft
footing/broms-f
    force 200 to 3000 lbf ^1; strength 500 to 3000 psf ^-1; width 0.5 to 2 ft ^-1
    at force 900 lbf, strength 100 psf, width 1 ft is 1 ft
footing/broms-g
    moment 1 to 30 kip-ft ^0.5; strength 500 to 3000 psf ^-0.5; width 0.5 to 2 ft ^-0.5
    at moment 900 lb-ft, strength 100 psf, width 1 ft is 2 ft
footing/broms-kp
    angle 5 to 45 ° rises
    at angle 0 ° is 1; at angle 30 ° is 3
footing/broms-length
    width 0.5 to 2 ft rises; shear_length 0.1 to 1 ft rises; moment_length 0.5 to 4 ft rises
    swap shear_length moment_length; at width 2 ft, shear_length 1 ft, moment_length 3 ft is 7 ft
footing/broms-reduced-friction
    factor 0.5 to 1 rises; angle 20 to 45 ° rises
    at factor 1 is 1 angle; at factor 0 is 0 °
footing/broms-reduced-strength
    factor 0.5 to 1 ^1; strength 500 to 3000 psf ^1
    at factor 1 is 1 strength
footing/broms-sand
    force 200 to 3000 lbf rises; height 1 to 10 ft rises; width 0.5 to 2 ft falls; angle 20 to 45 ° falls
    weight 60 to 130 psf/ft falls
    at force 600 lbf, height 0 ft, weight 100 psf/ft, width 1 ft, angle 30 ° is 2 ft; at force 0 lbf refused
    at height -1 ft refused; at width 0 ft refused
footing/broms-sand-capacity
    depth 2 to 8 ft rises; height 1 to 10 ft falls; width 0.5 to 2 ft ^1; angle 20 to 45 ° rises
    weight 60 to 130 psf/ft ^1
    at height 0 ft, weight 100 psf/ft, width 1 ft, depth 2 ft, angle 30 ° is 600 lbf; at height -1 ft refused
    at width 0 ft refused; at weight 0 psf/ft refused
footing/broms-sand-f
    force 200 to 3000 lbf ^0.5; weight 60 to 130 psf/ft ^-0.5; width 0.5 to 2 ft ^-0.5; passive 2 to 5 ^-0.5
    at force 600 lbf, weight 100 psf/ft, width 1 ft, passive 1 is 2 ft
footing/broms-sand-force
    weight 60 to 130 psf/ft ^1; width 0.5 to 2 ft ^1; depth 2 to 8 ft rises; passive 2 to 5 ^1
    height 1 to 10 ft falls
    at height 0 ft, weight 100 psf/ft, width 1 ft, depth 2 ft, passive 3 is 600 lbf
footing/broms-sand-moment
    force 2000 to 3000 lbf rises; height 1 to 10 ft rises; depth 0.5 to 1 ft rises; weight 60 to 130 psf/ft falls
    width 0.5 to 1 ft falls; passive 2 to 4 falls
    at depth 0 ft, force 100 lbf, height 5 ft is 500 lb-ft
    at force 0 lbf, depth 2 ft, weight 100 psf/ft, width 1 ft, passive 1 is -400 lb-ft
footing/capacity-at-level
    resistance 200 to 5000 lbf ^1; factor 1 to 2 ^-1
    at factor 2 is 0.5 resistance
footing/clay-modulus
    ratio 30 to 500 ^1; strength 500 to 3000 psf ^1
    at ratio 100, strength 1000 psf is 100000 psf
footing/constant-movement
    force 200 to 3000 lbf ^1; height 1 to 10 ft rises; depth 2 to 8 ft falls; modulus 50 to 1000 psi ^-1
    at height 0 ft, force 100 lbf, depth 2 ft, modulus 200 psf is 1 ft
footing/constant-rotation
    force 200 to 3000 lbf ^1; height 1 to 10 ft rises; depth 2 to 8 ft falls; modulus 50 to 1000 psi ^-1
    at height 0 ft, force 100 lbf, depth 2 ft, modulus 150 psf is 1 rad
footing/constant-stiffness
    depth 2 to 8 ft rises; height 1 to 10 ft rises; modulus 50 to 1000 psi ^1
    at depth 1 ft, height 2 ft, modulus 15 psf is 1 lb-ft/rad
footing/driven-added
    largest 10 to 30 kip-ft rises; at_grade 1 to 9 kip-ft falls
    at at_grade 0 kip-ft is 1 largest; at largest 5 kip-ft, at_grade 5 kip-ft is 0 kip-ft
footing/ep486-constrained
    force 200 to 3000 lbf ^0.3333333333333333; height 1 to 10 ft ^0.3333333333333333
    width 0.5 to 2 ft ^-0.3333333333333333; bearing 50 to 400 psf/ft ^-0.3333333333333333
    at force 400 lbf, height 4 ft, width 1 ft, bearing 100 psf/ft is 4 ft
footing/ep486-constrained-capacity
    depth 2 to 8 ft ^3; height 1 to 10 ft ^-1; width 0.5 to 2 ft ^1; bearing 50 to 400 psf/ft ^1
    at depth 4 ft, height 4 ft, width 1 ft, bearing 100 psf/ft is 400 lbf; at height 0 ft gives no number
footing/ep486-nonconstrained
    force 200 to 3000 lbf rises; height 1 to 10 ft rises; width 0.5 to 2 ft falls; bearing 50 to 400 psf/ft falls
    at height 0 ft, force 600 lbf, width 1 ft, bearing 100 psf/ft is 6 ft; at force 0 lbf refused
    at width 0 ft refused; at bearing 0 psf/ft refused; at height -1 ft refused
footing/ep486-nonconstrained-capacity
    depth 2 to 8 ft rises; height 1 to 10 ft falls; width 0.5 to 2 ft ^1; bearing 50 to 400 psf/ft ^1
    at depth 0 ft is 0 lbf; at height 0 ft, depth 6 ft, width 1 ft, bearing 100 psf/ft is 600 lbf
footing/factored-force
    factor 1 to 2 ^1; force 200 to 3000 lbf ^1
    at factor 2 is 2 force
footing/force-height
    moment 1 to 30 kip-ft ^1; force 200 to 3000 lbf ^-1
    at moment 500 lb-ft, force 100 lbf is 5 ft; at force 0 lbf gives no number
footing/hansen-ac
    surface 1 to 10 rises; deep 12 to 100 falls; angle 5 to 45 ° rises
    at surface 0 is 0; at angle 90 °, surface 1, deep 2 is 2; at surface 1, deep 1 gives no number
footing/hansen-aq
    surface 1 to 10 rises; deep 12 to 100 falls; at_rest 0.3 to 1 ^1; angle 5 to 45 ° rises
    at surface 0 is 0; at angle 90 °, surface 1, deep 2 is 1 at_rest; at surface 1, deep 1 gives no number
footing/hansen-balance
    moment 1 to 50 kip-ft ^1; height 1 to 10 ft falls; turn 1 to 5 ft falls
    swap height turn; at moment 100 lb-ft, height 3 ft, turn 2 ft is 20 lbf
footing/hansen-factored-cohesion
    cohesion 200 to 3000 psf ^1; factor 1 to 2 ^-1
    at factor 1 is 1 cohesion
footing/hansen-factored-friction
    angle 20 to 45 ° rises; factor 1 to 2 falls
    at factor 1 is 1 angle; at angle 0 ° is 0 °
# The sums of a coefficient that does not grow are those of a straight line, a square and a cube.
footing/hansen-j0
    reach 1 to 10 rises; surface 1 to 10 rises; deep 12 to 100 rises; growth 0.05 to 1 rises
    at reach 0 is 0; at surface 3, deep 3, reach 2 is 6
footing/hansen-j1
    reach 1 to 10 rises; surface 1 to 10 rises; deep 12 to 100 rises; growth 0.05 to 1 rises
    at reach 0 is 0; at surface 3, deep 3, reach 2 is 6
footing/hansen-j2
    reach 1 to 10 rises; surface 1 to 10 rises; deep 12 to 100 rises; growth 0.05 to 1 rises
    at reach 0 is 0; at surface 3, deep 3, reach 2 is 8
footing/hansen-k0
    angle 0 to 45 ° falls
    at angle 0 ° is 1; at angle 30 ° is 0.5; at angle 90 ° is 0
footing/hansen-kc-deep
    angle 5 to 45 ° rises; factor 5 to 100 ^1
    at angle 0 ° is 1.58 factor; at angle 45 ° is 5.67 factor
footing/hansen-kc0
    angle 5 to 45 ° rises
    at angle 0.01 ° nears 2.5707963267948966; at angle 0 ° gives no number
footing/hansen-kq-deep
    cohesion 8 to 100 ^1; at_rest 0.3 to 1 ^1; angle 5 to 45 ° rises
    at angle 45 °, at_rest 1 is 1 cohesion; at angle 0 ° is 0
footing/hansen-kq0
    angle 5 to 45 ° rises
    at angle 0 ° is 0
footing/hansen-moment-at-no-shear
    force 500 to 3000 lbf rises; height 1 to 10 ft rises; of_soil 1 to 5 kip-ft rises
    at of_soil 0 lb-ft, force 100 lbf, height 3 ft is 300 lb-ft; at force 0 lbf is 1 of_soil
footing/hansen-nc
    angle 5 to 45 ° rises
    at angle 0.01 ° nears 5.141592653589793; at angle 0 ° gives no number
footing/hansen-resisting-moment
    whole_moment 10 to 50 kip-ft rises; moment_above 1 to 5 kip-ft falls; turn 1 to 5 ft falls
    above 100 to 500 lbf rises; whole 2000 to 5000 lbf falls
    at turn 0 ft, moment_above 0 kip-ft is 1 whole_moment
footing/hansen-thrust
    width 0.5 to 2 ft rises; cohesion 0 to 3000 psf rises; of_cohesion 5 to 100 rises; weight 60 to 130 psf/ft rises
    of_overburden 5 to 100 rises
    at cohesion 10 psf, width 2 ft, of_cohesion 5, of_overburden 0 is 200 lbf
    at cohesion 0 psf, width 2 ft, weight 100 psf/ft, of_overburden 5 is 4000 lbf
footing/hansen-thrust-moment
    width 0.5 to 2 ft rises; cohesion 0 to 3000 psf rises; of_cohesion 5 to 100 rises; weight 60 to 130 psf/ft rises
    of_overburden 5 to 100 rises
    at cohesion 10 psf, width 2 ft, of_cohesion 5, of_overburden 0 is 400 lb-ft
    at cohesion 0 psf, width 2 ft, weight 100 psf/ft, of_overburden 5 is 8000 lb-ft
# 24 in for 4 ft of fence, 3 in for each foot more.
footing/hole-depth
    height 3 to 12 ft never falls
    at height 4 ft is 24 in; at height 3 ft is 24 in; at height 10 ft is 42 in; at height 0 ft refused
footing/hole-depth-by-height
    height 3 to 20 ft never falls; least 20 to 30 in rises; low 3 to 6 ft never rises; deeper 0.1 to 0.5 never falls
    at height 3 ft, low 4 ft is 1 least; at height 14 ft, low 4 ft, deeper 0.25, least 24 in is 54 in
# Four times the post, three times where it is over 4 in.
footing/hole-diameter
    post 1.5 to 4 in ^1
    at post 3 in is 12 in; at post 4 in is 16 in; at post 5 in is 15 in; at post 0 in refused
footing/hole-diameter-of-post
    post 1.5 to 4 in ^1; times 3 to 4 ^1
    at times 1 is 1 post
footing/ibc-18-1
    a 0.5 to 5 ft rises; height 1 to 10 ft rises
    at height 0 ft is 1 a; at a 4.36 ft, height 8 ft is 8.72 ft
footing/ibc-18-2
    force 200 to 3000 lbf ^0.5; height 1 to 10 ft ^0.5; pressure 100 to 1000 psf ^-0.5; width 0.5 to 2 ft ^-0.5
    at force 400 lbf, height 1 ft, pressure 100 psf, width 4.25 ft is 2 ft
footing/ibc-18-2-force
    depth 2 to 12 ft ^2; height 1 to 10 ft ^-1; pressure 100 to 1000 psf ^1; width 0.5 to 2 ft ^1
    at depth 2 ft, height 1 ft, pressure 100 psf, width 4.25 ft is 400 lbf
footing/ibc-1806-3-4
    factor 1 to 2 ^1; bearing 50 to 400 psf/ft ^1
    at factor 2 is 2 bearing
footing/ibc-a
    force 200 to 3000 lbf ^1; pressure 100 to 1000 psf ^-1; width 0.5 to 2 ft ^-1
    at force 100 lbf, pressure 100 psf, width 1 ft is 2.34 ft
footing/ibc-a-of-depth
    depth 2 to 12 ft rises; height 1 to 10 ft falls
    at height 0 ft is 1 depth
footing/ibc-constrained
    force 200 to 1000 lbf rises; height 1 to 10 ft rises; width 0.5 to 2 ft falls; bearing 50 to 400 psf/ft falls
    at force 800 lbf, height 1 ft, width 4.25 ft, bearing 100 psf/ft is 2 ft; at force 0 lbf refused
    at width 0 ft refused
footing/ibc-constrained-capacity
    depth 2 to 12 ft ^3; height 1 to 10 ft ^-1; width 0.5 to 2 ft ^1; bearing 50 to 400 psf/ft ^1
    at depth 2 ft, height 1 ft, width 4.25 ft, bearing 100 psf/ft is 800 lbf; at depth 13 ft refused
footing/ibc-diagonal
    side 0.5 to 2 ft ^1
    at side 1 ft is 1.4142135623730951 ft
footing/ibc-force
    a 0.5 to 5 ft ^1; pressure 100 to 1000 psf ^1; width 0.5 to 2 ft ^1
    at a 2.34 ft, pressure 100 psf, width 1 ft is 100 lbf
footing/ibc-nonconstrained
    force 200 to 800 lbf rises; height 1 to 10 ft rises; width 1 to 2 ft falls; bearing 100 to 400 psf/ft falls
    at height 0 ft, force 1000 lbf, width 1.17 ft, bearing 100 psf/ft is 7.745966692414834 ft
    at force 0 lbf refused; at height -1 ft refused; at width 0 ft refused; at bearing 0 psf/ft refused
    at force 100 kip refused
footing/ibc-nonconstrained-capacity
    depth 2 to 12 ft rises; height 1 to 10 ft falls; width 0.5 to 2 ft ^1; bearing 50 to 400 psf/ft ^1
    at height 0 ft, depth 6 ft, width 1.17 ft, bearing 100 psf/ft is 600 lbf; at depth 13 ft refused
    at height -1 ft refused
footing/ibc-s1
    bearing 50 to 400 psf/ft ^1; depth 2 to 12 ft ^1
    at bearing 100 psf/ft, depth 6 ft is 200 psf
footing/ibc-s3
    bearing 50 to 400 psf/ft ^1; depth 2 to 12 ft ^1
    at bearing 100 psf/ft, depth 6 ft is 600 psf
footing/ibc-table-1806-2
    class of 1 2 3 4 5 falls
    at class 3 is 200 psf/ft; at class 4 is 150 psf/ft; at class 5 is 100 psf/ft; at class 0 refused
    at class 6 refused; at class 1.5 refused
footing/ibc-trial
    trial 2 to 12 ft falls; force 200 to 3000 lbf rises; height 1 to 10 ft rises; width 0.5 to 2 ft falls
    bearing 50 to 400 psf/ft falls
    at height 0 ft, trial 6 ft, force 1000 lbf, width 1 ft, bearing 100 psf/ft is 11.7 ft
footing/length-factor-clay
    depth 2 to 8 ft ^1; modulus 50 to 1000 psi ^0.25; elastic 1000 to 30000 ksi ^-0.25
    second_moment 1 to 100 in⁴ ^-0.25
    at depth 2 in, modulus 4 psi, elastic 16 psi, second_moment 1 in⁴ is 1
footing/length-factor-sand
    depth 2 to 8 ft ^1; modulus 5 to 100 lb/in³ ^0.2; elastic 1000 to 30000 ksi ^-0.2
    second_moment 1 to 100 in⁴ ^-0.2
    at depth 2 in, modulus 1 lb/in³, elastic 32 psi, second_moment 1 in⁴ is 1
footing/load-at-level
    share 0.5 to 1.5 ^1; force 200 to 3000 lbf ^1
    at share 0.6 is 0.6 force
footing/nzbc
    force 200 to 3000 lbf rises; height 1 to 10 ft rises; width 0.5 to 2 ft turns; strength 500 to 3000 psf falls
    at force 0 lbf refused; at height -1 ft refused; at width 0 ft refused
footing/nzbc-capacity
    depth 4 to 10 ft rises; height 1 to 10 ft falls; width 0.5 to 2 ft turns; strength 500 to 3000 psf ^1
    at height -1 ft refused; at width 0 ft refused; at strength 0 psf refused
footing/nzbc-design-strength
    factor 0.4 to 1 ^1; strength 200 to 5000 lbf ^1
    at factor 0.5 is 0.5 strength
footing/nzbc-f0
    widths 1 to 3 ^1; width 0.5 to 2 ft ^1
    at widths 1.5, width 2 ft is 3 ft
footing/nzbc-hu
    strength 500 to 3000 psf ^1; width 0.5 to 2 ft ^1; arm 1 to 10 ft falls; length 1 to 8 ft rises
    at length 0 ft is 0 lbf; at arm 0 ft, strength 100 psf, width 1 ft, length 2.414213562373095 ft is 900 lbf
footing/pd6547
    force 200 to 3000 lbf rises; height 1 to 10 ft rises; width 0.5 to 2 ft falls; factor 100 to 1000 kPa/m falls
    at height 0 m, factor 100 kPa/m, width 1 m, force 14.142135623730951 kN is 1 m; at force 0 lbf refused
    at height -1 ft refused; at width 0 ft refused
footing/pd6547-arm
    height 1 to 10 ft rises; depth 2 to 8 ft rises
    at depth 0 ft is 1 height; at height 0 ft is 0.7071067811865476 depth
footing/pd6547-capacity
    depth 2 to 8 ft rises; height 1 to 10 ft falls; width 0.5 to 2 ft ^1; factor 100 to 1000 kPa/m ^1
    at height 0 m, factor 100 kPa/m, width 1 m, depth 1 m is 14.142135623730951 kN; at height -1 ft refused
    at width 0 ft refused
footing/pd6547-force
    moment 1 to 30 kip-ft ^1; arm 2 to 12 ft ^-1
    at moment 500 lb-ft, arm 5 ft is 100 lbf; at arm 0 ft gives no number
footing/pd6547-mg
    factor 100 to 1000 kPa/m ^1; width 0.5 to 2 ft ^1; depth 2 to 8 ft ^3
    at factor 100 kPa/m, width 1 m, depth 1 m is 10 kN m
footing/ratio
    force 200 to 3000 lbf ^1; capacity 200 to 3000 lbf ^-1
    at force 0 lbf is 0; at capacity 0 lbf gives no number
footing/rising-movement
    force 200 to 3000 lbf ^1; height 1 to 10 ft rises; depth 2 to 8 ft falls; modulus 5 to 100 lb/in³ ^-1
    at height 0 ft, force 100 lbf, depth 3 ft, modulus 200 psf/ft is 1 ft
footing/rising-rotation
    force 200 to 3000 lbf ^1; height 1 to 10 ft rises; depth 2 to 8 ft falls; modulus 5 to 100 lb/in³ ^-1
    at height 0 ft, force 100 lbf, depth 2 ft, modulus 300 psf/ft is 1 rad
footing/rising-stiffness
    depth 2 to 8 ft rises; height 1 to 10 ft rises; modulus 5 to 100 lb/in³ ^1
    at depth 1 ft, height 2 ft, modulus 48 psf/ft is 1 lb-ft/rad
footing/service-share
    service 60 to 100 mph ^2; ultimate 80 to 140 mph ^-2
    at service 50 mph, ultimate 100 mph is 0.25
footing/set-in-depth
    moment 1 to 30 kip-ft ^0.5; width 2 to 6 in ^-0.5; bearing 1 to 3 ksi ^-0.5
    at moment 6 kip-in, width 1 in, bearing 4 ksi is 3 in
footing/softest-base
    stiffness 10000 to 1000000 lb-ft/rad ^1; factor 1 to 3 ^-1
    at factor 1 is 1 stiffness
footing/stiffest-base
    stiffness 10000 to 1000000 lb-ft/rad ^1; factor 1 to 3 ^1
    at factor 1 is 1 stiffness
frame/beam-p-delta
    length 5 to 10 ft rises; modulus 28000 to 30000 ksi falls; second_moment 1 to 10 in⁴ falls
    load 10 to 100 lb/ft ^1; thrust 10 to 900 lbf rises
    at thrust 0 N, load 2 N/m, length 2 m is 1 N m; at length 0 ft refused; at modulus 0 ksi refused
    at second_moment 0 in⁴ refused; at thrust -1 lbf refused; at thrust 1e9 lbf refused
frame/beam-p-delta-deflection
    length 5 to 10 ft rises; modulus 28000 to 30000 ksi falls; second_moment 1 to 10 in⁴ falls
    load 10 to 100 lb/ft ^1; thrust 10 to 900 lbf rises
    at thrust 0 N, load 384 N/m, length 1 m, modulus 1 MPa, second_moment 1 m⁴ is 5e-6 m; at length 0 ft refused
    at modulus 0 ksi refused; at second_moment 0 in⁴ refused; at thrust -1 lbf refused; at thrust 1e9 lbf refused
frame/braced-deflection
    height 8 to 12 ft rises; brace_height 4 to 7 ft turns; brace_foot 3 to 6 ft falls
    modulus 28000 to 30000 ksi falls; area 1 to 3 in² falls; second_moment 1 to 5 in⁴ never rises
    brace_area 0.5 to 2 in² falls; load 10 to 100 lb/ft ^1; turns of 0 1 matters
    at brace_height 0 ft refused; at height 4 ft, brace_height 4 ft refused; at brace_foot 0 ft refused
    at modulus 0 ksi refused; at area 0 in² refused; at second_moment 0 in⁴ refused; at brace_area 0 in² refused
frame/braced-force
    height 8 to 12 ft rises; brace_height 4 to 7 ft falls; brace_foot 3 to 6 ft falls
    modulus 28000 to 30000 ksi nothing; area 1 to 3 in² never falls; second_moment 1 to 5 in⁴ never rises
    brace_area 0.5 to 2 in² never falls; load 10 to 100 lb/ft ^1; turns of 0 1 matters
    at height 4 m, brace_height 2 m, brace_foot 2 m, load 1 N/m, turns 1 is 5.656854249492381 N
    at brace_height 0 ft refused; at height 4 ft, brace_height 4 ft refused; at brace_foot 0 ft refused
    at modulus 0 ksi refused; at area 0 in² refused; at second_moment 0 in⁴ refused; at brace_area 0 in² refused
frame/braced-moment
    height 8 to 12 ft never rises; brace_height 4 to 7 ft never falls; brace_foot 3 to 6 ft never rises
    modulus 28000 to 30000 ksi nothing; area 1 to 3 in² never rises; second_moment 1 to 5 in⁴ never falls
    brace_area 0.5 to 2 in² never rises; load 10 to 100 lb/ft matters; turns of 0 1 matters
    at height 4 m, brace_height 2 m, brace_foot 2 m, load 1 N/m, turns 1 is 0 N m; at brace_height 0 ft refused
    at height 4 ft, brace_height 4 ft refused; at brace_foot 0 ft refused; at modulus 0 ksi refused
    at area 0 in² refused; at second_moment 0 in⁴ refused; at brace_area 0 in² refused
frame/braced-shear
    height 8 to 12 ft falls; brace_height 4 to 7 ft rises; brace_foot 3 to 6 ft never rises
    modulus 28000 to 30000 ksi nothing; area 1 to 3 in² never rises; second_moment 1 to 5 in⁴ never falls
    brace_area 0.5 to 2 in² never rises; load 10 to 100 lb/ft ^1; turns of 0 1 matters
    at height 4 m, brace_height 2 m, brace_foot 2 m, load 1 N/m, turns 1 is 0 N; at brace_height 0 ft refused
    at height 4 ft, brace_height 4 ft refused; at brace_foot 0 ft refused; at modulus 0 ksi refused
    at area 0 in² refused; at second_moment 0 in⁴ refused; at brace_area 0 in² refused
frame/braced-top-deflection
    height 8 to 12 ft matters; brace_height 4 to 7 ft falls; brace_foot 3 to 6 ft falls
    modulus 28000 to 30000 ksi matters; area 1 to 3 in² falls; second_moment 1 to 5 in⁴ matters
    brace_area 0.5 to 2 in² falls; load 10 to 100 lb/ft ^1; turns of 0 1 matters
    at brace_height 0 ft refused; at height 4 ft, brace_height 4 ft refused; at brace_foot 0 ft refused
    at modulus 0 ksi refused; at area 0 in² refused; at second_moment 0 in⁴ refused; at brace_area 0 in² refused
frame/cantilever-deflection
    length 9 to 12 ft rises; modulus 28000 to 30000 ksi falls; second_moment 1 to 5 in⁴ falls; from 0 to 3 ft turns
    to 5 to 8 ft rises; load_from 10 to 100 lb/ft rises; load_to 10 to 100 lb/ft rises; turns of 0 1 rises
    turning_stiffness 50 to 1000 kip-ft never rises
    at length 2 m, from 0 m, to 2 m, load_from 8 N/m, load_to 8 N/m, modulus 1 MPa, second_moment 1 m⁴, turns 0 is 16e-6 m
    at length 2 m, from 0 m, to 2 m, load_from 8 N/m, load_to 8 N/m, modulus 1 MPa, second_moment 1 m⁴, turns 1, turning_stiffness 2e6 N m is 32e-6 m
    at length 0 ft refused; at modulus 0 ksi refused; at second_moment 0 in⁴ refused; at from -1 ft refused
    at to 13 ft refused; at from 4 ft, to 3 ft refused; at turns 1, turning_stiffness 0 kip-ft refused
frame/cantilever-moment
    length 9 to 12 ft nothing; modulus 28000 to 30000 ksi nothing; second_moment 1 to 5 in⁴ nothing
    from 0 to 3 ft turns; to 5 to 8 ft rises; load_from 10 to 100 lb/ft rises; load_to 10 to 100 lb/ft rises
    turns of 0 1 nothing; turning_stiffness 50 to 1000 kip-ft nothing
    at length 2 m, from 0 m, to 2 m, load_from 8 N/m, load_to 8 N/m is 16 N m; at length 0 ft refused
    at modulus 0 ksi refused; at second_moment 0 in⁴ refused; at from -1 ft refused; at to 13 ft refused
    at from 4 ft, to 3 ft refused; at turns 1, turning_stiffness 0 kip-ft refused
frame/cantilever-p-delta
    length 5 to 10 ft rises; modulus 28000 to 30000 ksi falls; second_moment 1 to 10 in⁴ falls
    force 10 to 500 lbf ^1; thrust 10 to 900 lbf rises
    at thrust 0 N, force 3 N, length 2 m is 6 N m; at length 0 ft refused; at modulus 0 ksi refused
    at second_moment 0 in⁴ refused; at thrust -1 lbf refused; at thrust 1e9 lbf refused
frame/cantilever-p-delta-deflection
    length 5 to 10 ft rises; modulus 28000 to 30000 ksi falls; second_moment 1 to 10 in⁴ falls
    force 10 to 500 lbf ^1; thrust 10 to 900 lbf rises
    at thrust 0 N, force 3 N, length 1 m, modulus 1 MPa, second_moment 1 m⁴ is 1e-6 m; at length 0 ft refused
    at modulus 0 ksi refused; at second_moment 0 in⁴ refused; at thrust -1 lbf refused; at thrust 1e9 lbf refused
frame/cantilever-shear
    length 9 to 12 ft nothing; modulus 28000 to 30000 ksi nothing; second_moment 1 to 5 in⁴ nothing
    from 0 to 3 ft falls; to 5 to 8 ft rises; load_from 10 to 100 lb/ft rises; load_to 10 to 100 lb/ft rises
    turns of 0 1 nothing; turning_stiffness 50 to 1000 kip-ft nothing
    at length 2 m, from 0 m, to 2 m, load_from 8 N/m, load_to 8 N/m is 16 N; at length 0 ft refused
    at modulus 0 ksi refused; at second_moment 0 in⁴ refused; at from -1 ft refused; at to 13 ft refused
    at from 4 ft, to 3 ft refused; at turns 1, turning_stiffness 0 kip-ft refused
frame/cantilever-slope
    length 9 to 12 ft nothing; modulus 28000 to 30000 ksi falls; second_moment 1 to 5 in⁴ falls
    from 0 to 3 ft turns; to 5 to 8 ft rises; load_from 10 to 100 lb/ft rises; load_to 10 to 100 lb/ft rises
    turns of 0 1 rises; turning_stiffness 50 to 1000 kip-ft never rises
    at length 2 m, from 0 m, to 2 m, load_from 8 N/m, load_to 8 N/m, modulus 1 MPa, second_moment 1 m⁴, turns 0 is 10.666666666666666e-6 rad
    at length 2 m, from 0 m, to 2 m, load_from 8 N/m, load_to 8 N/m, modulus 1 MPa, second_moment 1 m⁴, turns 1, turning_stiffness 2e6 N m is 18.666666666666666e-6 rad
    at length 0 ft refused; at modulus 0 ksi refused; at second_moment 0 in⁴ refused; at from -1 ft refused
    at to 13 ft refused; at from 4 ft, to 3 ft refused; at turns 1, turning_stiffness 0 kip-ft refused
frame/chain-end-moment
    x_2 1 to 3 ft matters; y_2 3 to 5 ft matters; z_2 -1 to 1 ft matters; x_3 5 to 7 ft matters
    y_3 4 to 6 ft matters; z_3 1 to 3 ft matters; x_4 8 to 10 ft matters; y_4 -1 to 1 ft matters
    z_4 3 to 5 ft matters; modulus 28000 to 30000 ksi matters; shear_modulus 10000 to 12000 ksi matters
    area 1 to 4 in² matters; second_moment 1 to 4 in⁴ matters; middle_second_moment 1 to 4 in⁴ matters
    torsion 1 to 4 in⁴ matters; force_x 100 to 900 lbf matters; force_y 100 to 900 lbf matters
    moment_z 100 to 900 lb-ft matters; number of 1 2 3 4 5 6 matters
    at force_x 0 lbf, force_y 0 lbf, moment_z 0 lb-ft is 0 lb-ft; at modulus 0 ksi refused
    at shear_modulus 0 ksi refused; at area 0 in² refused; at second_moment 0 in⁴ refused
    at middle_second_moment 0 in⁴ refused; at torsion 0 in⁴ refused; at number 0 refused; at number 7 refused
frame/chain-force
    x_2 1 to 3 ft matters; y_2 3 to 5 ft matters; z_2 -1 to 1 ft matters; x_3 5 to 7 ft matters
    y_3 4 to 6 ft matters; z_3 1 to 3 ft matters; x_4 8 to 10 ft matters; y_4 -1 to 1 ft matters
    z_4 3 to 5 ft matters; modulus 28000 to 30000 ksi matters; shear_modulus 10000 to 12000 ksi matters
    area 1 to 4 in² matters; second_moment 1 to 4 in⁴ matters; middle_second_moment 1 to 4 in⁴ matters
    torsion 1 to 4 in⁴ matters; force_x 100 to 900 lbf matters; force_y 100 to 900 lbf matters
    moment_z 100 to 900 lb-ft matters; number of 1 2 3 4 5 6 matters
    at force_x 0 lbf, force_y 0 lbf, moment_z 0 lb-ft is 0 lbf; at modulus 0 ksi refused
    at shear_modulus 0 ksi refused; at area 0 in² refused; at second_moment 0 in⁴ refused
    at middle_second_moment 0 in⁴ refused; at torsion 0 in⁴ refused; at number 0 refused; at number 7 refused
frame/chain-moment
    x_2 1 to 3 ft matters; y_2 3 to 5 ft matters; z_2 -1 to 1 ft matters; x_3 5 to 7 ft matters
    y_3 4 to 6 ft matters; z_3 1 to 3 ft matters; x_4 8 to 10 ft matters; y_4 -1 to 1 ft matters
    z_4 3 to 5 ft matters; modulus 28000 to 30000 ksi matters; shear_modulus 10000 to 12000 ksi matters
    area 1 to 4 in² matters; second_moment 1 to 4 in⁴ matters; middle_second_moment 1 to 4 in⁴ matters
    torsion 1 to 4 in⁴ matters; force_x 100 to 900 lbf matters; force_y 100 to 900 lbf matters
    moment_z 100 to 900 lb-ft matters; number of 1 2 3 4 5 6 matters
    at force_x 0 lbf, force_y 0 lbf, moment_z 0 lb-ft is 0 lb-ft; at modulus 0 ksi refused
    at shear_modulus 0 ksi refused; at area 0 in² refused; at second_moment 0 in⁴ refused
    at middle_second_moment 0 in⁴ refused; at torsion 0 in⁴ refused; at number 0 refused; at number 7 refused
frame/chain-movement
    x_2 1 to 3 ft matters; y_2 3 to 5 ft matters; z_2 -1 to 1 ft matters; x_3 5 to 7 ft matters
    y_3 4 to 6 ft matters; z_3 1 to 3 ft matters; x_4 8 to 10 ft matters; y_4 -1 to 1 ft matters
    z_4 3 to 5 ft matters; modulus 28000 to 30000 ksi matters; shear_modulus 10000 to 12000 ksi matters
    area 1 to 4 in² matters; second_moment 1 to 4 in⁴ matters; middle_second_moment 1 to 4 in⁴ matters
    torsion 1 to 4 in⁴ matters; force_x 100 to 900 lbf matters; force_y 100 to 900 lbf matters
    moment_z 100 to 900 lb-ft matters; number of 1 2 3 4 5 6 matters
    at force_x 0 lbf, force_y 0 lbf, moment_z 0 lb-ft is 0 in; at modulus 0 ksi refused
    at shear_modulus 0 ksi refused; at area 0 in² refused; at second_moment 0 in⁴ refused
    at middle_second_moment 0 in⁴ refused; at torsion 0 in⁴ refused; at number 0 refused; at number 7 refused
frame/chain-turn
    x_2 1 to 3 ft matters; y_2 3 to 5 ft matters; z_2 -1 to 1 ft matters; x_3 5 to 7 ft matters
    y_3 4 to 6 ft matters; z_3 1 to 3 ft matters; x_4 8 to 10 ft matters; y_4 -1 to 1 ft matters
    z_4 3 to 5 ft matters; modulus 28000 to 30000 ksi matters; shear_modulus 10000 to 12000 ksi matters
    area 1 to 4 in² matters; second_moment 1 to 4 in⁴ matters; middle_second_moment 1 to 4 in⁴ matters
    torsion 1 to 4 in⁴ matters; force_x 100 to 900 lbf matters; force_y 100 to 900 lbf matters
    moment_z 100 to 900 lb-ft matters; number of 1 2 3 4 5 6 matters
    at force_x 0 lbf, force_y 0 lbf, moment_z 0 lb-ft is 0 °; at modulus 0 ksi refused
    at shear_modulus 0 ksi refused; at area 0 in² refused; at second_moment 0 in⁴ refused
    at middle_second_moment 0 in⁴ refused; at torsion 0 in⁴ refused; at number 0 refused; at number 7 refused
frame/continuous-beam
    spans of 3 4 5 matters; loaded_from of 1 2 matters; loaded_to of 2 3 matters; clamped of 0 1 matters
    at of 1 2 3 matters; at spans 1, loaded_from 1, loaded_to 1, clamped 0, at 1 is 0.125
    at spans 2, loaded_from 1, loaded_to 2, clamped 0, at 1 is 0.0703125; at spans 0 refused; at spans 2.5 refused
    at loaded_from 0 refused; at spans 3, loaded_to 4 refused; at loaded_from 3, loaded_to 2 refused
    at at 0 refused; at at 1.5 refused; at spans 3, at 5 refused
frame/continuous-beam-deflection
    spans of 3 4 5 matters; loaded_from of 1 2 matters; loaded_to of 2 3 matters; clamped of 0 1 matters
    at of 1 2 3 matters; at spans 1, loaded_from 1, loaded_to 1, clamped 0, at 1 is 5/384; at spans 0 refused
    at spans 2.5 refused; at loaded_from 0 refused; at spans 3, loaded_to 4 refused
    at loaded_from 3, loaded_to 2 refused; at at 0 refused; at at 1.5 refused; at spans 3, at 5 refused
frame/continuous-beam-deflection-place
    spans of 3 4 5 matters; loaded_from of 1 2 matters; loaded_to of 2 3 matters; clamped of 0 1 matters
    at of 1 2 3 matters; at spans 1, loaded_from 1, loaded_to 1, clamped 0, at 1 is 0.5; at spans 0 refused
    at spans 2.5 refused; at loaded_from 0 refused; at spans 3, loaded_to 4 refused
    at loaded_from 3, loaded_to 2 refused; at at 0 refused; at at 1.5 refused; at spans 3, at 5 refused
frame/continuous-beam-place
    spans of 3 4 5 matters; loaded_from of 1 2 matters; loaded_to of 2 3 matters; clamped of 0 1 matters
    at of 1 2 3 matters; at spans 1, loaded_from 1, loaded_to 1, clamped 0, at 1 is 0.5
    at spans 2, loaded_from 1, loaded_to 2, clamped 0, at 1 is 0.375
    at spans 2, loaded_from 1, loaded_to 2, clamped 0, at 2 is 0.625; at spans 0 refused; at spans 2.5 refused
    at loaded_from 0 refused; at spans 3, loaded_to 4 refused; at loaded_from 3, loaded_to 2 refused
    at at 0 refused; at at 1.5 refused; at spans 3, at 5 refused
frame/continuous-beam-reaction
    spans of 3 4 5 matters; loaded_from of 1 2 matters; loaded_to of 2 3 matters; clamped of 0 1 matters
    at of 1 2 3 matters; at spans 1, loaded_from 1, loaded_to 1, clamped 0, at 1 is 0.5
    at spans 2, loaded_from 1, loaded_to 2, clamped 0, at 2 is 1.25
    at spans 2, loaded_from 1, loaded_to 2, clamped 0, at 3 is 0.375; at spans 0 refused; at spans 2.5 refused
    at loaded_from 0 refused; at spans 3, loaded_to 4 refused; at loaded_from 3, loaded_to 2 refused
    at at 0 refused; at at 1.5 refused; at spans 3, at 5 refused
frame/continuous-beam-support
    spans of 3 4 5 matters; loaded_from of 1 2 matters; loaded_to of 2 3 matters; clamped of 0 1 matters
    at of 1 2 3 matters; at spans 1, loaded_from 1, loaded_to 1, clamped 0, at 1 is 0
    at spans 2, loaded_from 1, loaded_to 2, clamped 0, at 2 is -0.125
    at spans 1, loaded_from 1, loaded_to 1, clamped 1, at 1 is -0.125; at spans 0 refused; at spans 2.5 refused
    at loaded_from 0 refused; at spans 3, loaded_to 4 refused; at loaded_from 3, loaded_to 2 refused
    at at 0 refused; at at 1.5 refused; at spans 3, at 5 refused
frame/corner-force
    end_x 5 to 10 ft matters; end_y 5 to 10 ft matters; end_z 5 to 10 ft matters; roll_x 0 to 90 ° matters
    roll_y 0 to 90 ° matters; roll_z 0 to 90 ° matters; modulus 28000 to 30000 ksi matters
    shear_modulus 10000 to 12000 ksi matters; area 1 to 4 in² matters; second_moment_y 1 to 3 in⁴ matters
    second_moment_z 4 to 6 in⁴ matters; torsion 1 to 4 in⁴ matters; load 10 to 100 lb/ft matters
    force_x 100 to 900 lbf matters; force_y 100 to 900 lbf matters; force_z 100 to 900 lbf matters
    moment_x 100 to 900 lb-ft matters; moment_y 100 to 900 lb-ft matters; moment_z 100 to 900 lb-ft matters
    number of 1 2 3 4 5 6 7 8 9 matters
    at load 0 lb/ft, force_x 0 lbf, force_y 0 lbf, force_z 0 lbf, moment_x 0 lb-ft, moment_y 0 lb-ft, moment_z 0 lb-ft is 0 lbf
    at end_x 0 ft refused; at end_y 0 ft refused; at end_z 0 ft refused; at modulus 0 ksi refused
    at shear_modulus 0 ksi refused; at area 0 in² refused; at second_moment_y 0 in⁴ refused
    at torsion 0 in⁴ refused; at number 0 refused; at number 10 refused; at number 1.5 refused
frame/corner-moment
    end_x 5 to 10 ft matters; end_y 5 to 10 ft matters; end_z 5 to 10 ft matters; roll_x 0 to 90 ° matters
    roll_y 0 to 90 ° matters; roll_z 0 to 90 ° matters; modulus 28000 to 30000 ksi matters
    shear_modulus 10000 to 12000 ksi matters; area 1 to 4 in² matters; second_moment_y 1 to 3 in⁴ matters
    second_moment_z 4 to 6 in⁴ matters; torsion 1 to 4 in⁴ matters; load 10 to 100 lb/ft matters
    force_x 100 to 900 lbf matters; force_y 100 to 900 lbf matters; force_z 100 to 900 lbf matters
    moment_x 100 to 900 lb-ft matters; moment_y 100 to 900 lb-ft matters; moment_z 100 to 900 lb-ft matters
    number of 1 2 3 4 5 6 7 8 9 matters
    at load 0 lb/ft, force_x 0 lbf, force_y 0 lbf, force_z 0 lbf, moment_x 0 lb-ft, moment_y 0 lb-ft, moment_z 0 lb-ft is 0 lb-ft
    at end_x 0 ft refused; at end_y 0 ft refused; at end_z 0 ft refused; at modulus 0 ksi refused
    at shear_modulus 0 ksi refused; at area 0 in² refused; at second_moment_y 0 in⁴ refused
    at torsion 0 in⁴ refused; at number 0 refused; at number 10 refused; at number 1.5 refused
frame/corner-movement
    end_x 5 to 10 ft matters; end_y 5 to 10 ft matters; end_z 5 to 10 ft matters; roll_x 0 to 90 ° matters
    roll_y 0 to 90 ° matters; roll_z 0 to 90 ° matters; modulus 28000 to 30000 ksi matters
    shear_modulus 10000 to 12000 ksi matters; area 1 to 4 in² matters; second_moment_y 1 to 3 in⁴ matters
    second_moment_z 4 to 6 in⁴ matters; torsion 1 to 4 in⁴ matters; load 10 to 100 lb/ft matters
    force_x 100 to 900 lbf matters; force_y 100 to 900 lbf matters; force_z 100 to 900 lbf matters
    moment_x 100 to 900 lb-ft matters; moment_y 100 to 900 lb-ft matters; moment_z 100 to 900 lb-ft matters
    number of 1 2 3 matters
    at load 0 lb/ft, force_x 0 lbf, force_y 0 lbf, force_z 0 lbf, moment_x 0 lb-ft, moment_y 0 lb-ft, moment_z 0 lb-ft is 0 in
    at end_x 0 ft refused; at end_y 0 ft refused; at end_z 0 ft refused; at modulus 0 ksi refused
    at shear_modulus 0 ksi refused; at area 0 in² refused; at second_moment_y 0 in⁴ refused
    at torsion 0 in⁴ refused; at number 0 refused; at number 4 refused; at number 1.5 refused
frame/corner-turn
    end_x 5 to 10 ft matters; end_y 5 to 10 ft matters; end_z 5 to 10 ft matters; roll_x 0 to 90 ° matters
    roll_y 0 to 90 ° matters; roll_z 0 to 90 ° matters; modulus 28000 to 30000 ksi matters
    shear_modulus 10000 to 12000 ksi matters; area 1 to 4 in² matters; second_moment_y 1 to 3 in⁴ matters
    second_moment_z 4 to 6 in⁴ matters; torsion 1 to 4 in⁴ matters; load 10 to 100 lb/ft matters
    force_x 100 to 900 lbf matters; force_y 100 to 900 lbf matters; force_z 100 to 900 lbf matters
    moment_x 100 to 900 lb-ft matters; moment_y 100 to 900 lb-ft matters; moment_z 100 to 900 lb-ft matters
    number of 1 2 3 matters
    at load 0 lb/ft, force_x 0 lbf, force_y 0 lbf, force_z 0 lbf, moment_x 0 lb-ft, moment_y 0 lb-ft, moment_z 0 lb-ft is 0 °
    at end_x 0 ft refused; at end_y 0 ft refused; at end_z 0 ft refused; at modulus 0 ksi refused
    at shear_modulus 0 ksi refused; at area 0 in² refused; at second_moment_y 0 in⁴ refused
    at torsion 0 in⁴ refused; at number 0 refused; at number 4 refused; at number 1.5 refused
frame/elbow-force
    knee_x 3 to 6 ft matters; knee_y 3 to 6 ft matters; end_x 8 to 12 ft matters; end_y -2 to 2 ft matters
    rolls of 0 1 matters; modulus 28000 to 30000 ksi nothing; area 1 to 4 in² matters
    second_moment 1 to 4 in⁴ matters; force_x 100 to 900 lbf matters; force_y 100 to 900 lbf matters
    moment 100 to 900 lb-ft matters; number of 1 2 3 4 matters
    at force_x 0 lbf, force_y 0 lbf, moment 0 lb-ft is 0 lbf; at modulus 0 ksi refused; at area 0 in² refused
    at second_moment 0 in⁴ refused; at number 0 refused; at number 5 refused; at knee_x 0 ft, knee_y 0 ft refused
frame/elbow-moment
    knee_x 3 to 6 ft matters; knee_y 3 to 6 ft matters; end_x 8 to 12 ft matters; end_y -2 to 2 ft matters
    rolls of 0 1 matters; modulus 28000 to 30000 ksi nothing; area 1 to 4 in² matters
    second_moment 1 to 4 in⁴ matters; force_x 100 to 900 lbf matters; force_y 100 to 900 lbf matters
    moment 100 to 900 lb-ft matters; number of 1 2 matters
    at force_x 0 lbf, force_y 0 lbf, moment 0 lb-ft is 0 lb-ft; at modulus 0 ksi refused; at area 0 in² refused
    at second_moment 0 in⁴ refused; at number 0 refused; at number 5 refused; at knee_x 0 ft, knee_y 0 ft refused
frame/elbow-movement
    knee_x 3 to 6 ft matters; knee_y 3 to 6 ft matters; end_x 8 to 12 ft matters; end_y -2 to 2 ft matters
    rolls of 0 1 matters; modulus 28000 to 30000 ksi matters; area 1 to 4 in² matters
    second_moment 1 to 4 in⁴ matters; force_x 100 to 900 lbf matters; force_y 100 to 900 lbf matters
    moment 100 to 900 lb-ft matters; number of 1 2 3 4 matters
    at force_x 0 lbf, force_y 0 lbf, moment 0 lb-ft is 0 in; at modulus 0 ksi refused; at area 0 in² refused
    at second_moment 0 in⁴ refused; at number 0 refused; at number 5 refused; at knee_x 0 ft, knee_y 0 ft refused
frame/elbow-turn
    knee_x 3 to 6 ft matters; knee_y 3 to 6 ft matters; end_x 8 to 12 ft matters; end_y -2 to 2 ft matters
    rolls of 0 1 matters; modulus 28000 to 30000 ksi matters; area 1 to 4 in² matters
    second_moment 1 to 4 in⁴ matters; force_x 100 to 900 lbf matters; force_y 100 to 900 lbf matters
    moment 100 to 900 lb-ft matters; number of 1 2 matters
    at force_x 0 lbf, force_y 0 lbf, moment 0 lb-ft is 0 °; at modulus 0 ksi refused; at area 0 in² refused
    at second_moment 0 in⁴ refused; at number 0 refused; at number 5 refused; at knee_x 0 ft, knee_y 0 ft refused
frame/row-deflection
    uprights of 4 5 6 matters; height 6 to 10 ft rises; spacing 8 to 10 ft matters; modulus 28000 to 30000 ksi falls
    second_moment 1 to 3 in⁴ falls; rail_second_moment 0.1 to 0.5 in⁴ matters; end_load 10 to 50 lb/ft matters
    inner_load 60 to 100 lb/ft rises; turns of 0 1 rises; turning_stiffness 100 to 1000 kip-ft never rises
    number of 2 3 4 matters
    at end_load 8 N/m, inner_load 8 N/m, height 2 m, modulus 1 MPa, second_moment 1 m⁴, turns 0 is 16e-6 m
    at uprights 1 refused; at uprights 2.5 refused; at height 0 ft refused; at spacing 0 ft refused
    at modulus 0 ksi refused; at second_moment 0 in⁴ refused; at rail_second_moment 0 in⁴ refused
    at turns 1, turning_stiffness 0 kip-ft refused; at uprights 3, number 4 refused; at number 0 refused
frame/row-moment
    uprights of 4 5 6 matters; height 6 to 10 ft rises; spacing 8 to 10 ft matters
    modulus 28000 to 30000 ksi matters; second_moment 1 to 3 in⁴ matters; rail_second_moment 0.1 to 0.5 in⁴ matters
    end_load 10 to 50 lb/ft matters; inner_load 60 to 100 lb/ft rises; turns of 0 1 matters
    turning_stiffness 100 to 1000 kip-ft matters; number of 2 3 4 matters
    at end_load 8 N/m, inner_load 8 N/m, height 2 m is 16 N m; at uprights 1 refused; at uprights 2.5 refused
    at height 0 ft refused; at spacing 0 ft refused; at modulus 0 ksi refused; at second_moment 0 in⁴ refused
    at rail_second_moment 0 in⁴ refused; at turns 1, turning_stiffness 0 kip-ft refused
    at uprights 3, number 4 refused; at number 0 refused
frame/row-rail-force
    uprights of 4 5 6 matters; height 6 to 10 ft matters; spacing 8 to 10 ft matters
    modulus 28000 to 30000 ksi matters; second_moment 1 to 3 in⁴ matters; rail_second_moment 0.1 to 0.5 in⁴ matters
    end_load 10 to 50 lb/ft matters; inner_load 60 to 100 lb/ft matters; turns of 0 1 matters
    turning_stiffness 100 to 1000 kip-ft matters; number of 2 3 4 matters
    at end_load 8 N/m, inner_load 8 N/m is 0 lbf; at uprights 1 refused; at uprights 2.5 refused
    at height 0 ft refused; at spacing 0 ft refused; at modulus 0 ksi refused; at second_moment 0 in⁴ refused
    at rail_second_moment 0 in⁴ refused; at turns 1, turning_stiffness 0 kip-ft refused
    at uprights 3, number 4 refused; at number 0 refused
frame/row-rail-moment
    uprights of 4 5 6 matters; height 6 to 10 ft matters; spacing 8 to 10 ft matters
    modulus 28000 to 30000 ksi matters; second_moment 1 to 3 in⁴ matters; rail_second_moment 0.1 to 0.5 in⁴ matters
    end_load 10 to 50 lb/ft matters; inner_load 60 to 100 lb/ft matters; turns of 0 1 matters
    turning_stiffness 100 to 1000 kip-ft matters; number of 2 3 4 matters
    at uprights 1 refused; at uprights 2.5 refused; at height 0 ft refused; at spacing 0 ft refused
    at modulus 0 ksi refused; at second_moment 0 in⁴ refused; at rail_second_moment 0 in⁴ refused
    at turns 1, turning_stiffness 0 kip-ft refused; at uprights 3, number 4 refused; at number 0 refused
frame/row-shear
    uprights of 4 5 6 matters; height 6 to 10 ft rises; spacing 8 to 10 ft matters
    modulus 28000 to 30000 ksi matters; second_moment 1 to 3 in⁴ matters; rail_second_moment 0.1 to 0.5 in⁴ matters
    end_load 10 to 50 lb/ft matters; inner_load 60 to 100 lb/ft rises; turns of 0 1 matters
    turning_stiffness 100 to 1000 kip-ft matters; number of 2 3 4 matters
    at end_load 8 N/m, inner_load 8 N/m, height 2 m is 16 N; at uprights 1 refused; at uprights 2.5 refused
    at height 0 ft refused; at spacing 0 ft refused; at modulus 0 ksi refused; at second_moment 0 in⁴ refused
    at rail_second_moment 0 in⁴ refused; at turns 1, turning_stiffness 0 kip-ft refused
    at uprights 3, number 4 refused; at number 0 refused
gust/admittance
    ratio 0.05 to 10 falls
    at ratio 0.001 nears 1; at ratio 0 gives no number
gust/background-response
    breadth 5 to 200 ft falls; height 5 to 20 ft falls; scale 300 to 700 ft rises
    swap breadth height; at breadth 0 ft, height 0 ft is 1
    at breadth 50 ft, height 50 ft, scale 100 ft is 0.7832604499879574
gust/equivalent-height
    height 5 to 60 ft never falls; least 15 to 30 ft never falls
    at height 100 ft, least 15 ft is 60 ft; at height 0 ft is 1 least
gust/flexible-factor
    intensity 0.15 to 0.3 turns; peak 3 to 4 falls; background 0.7 to 0.95 rises; resonant_peak 3 to 4.5 rises
    resonant 0.2 to 2 rises
    at intensity 0 is 0.925; at resonant 0, background 1 is 0.925
gust/length-scale
    length 300 to 700 ft ^1; equivalent 34 to 60 ft rises; reference 30 to 33 ft falls; power 0.1 to 0.35 rises
    at reference 33 ft, equivalent 33 ft is 1 length
gust/mean-hourly-speed
    factor 0.4 to 0.8 ^1; equivalent 34 to 60 ft rises; reference 30 to 33 ft falls; power 0.1 to 0.25 rises
    speed 60 to 180 mph ^1
    at factor 1, reference 33 ft, equivalent 33 ft is 1 speed
gust/reduced-frequency
    frequency 0.3 to 1 Hz ^1; scale 300 to 700 ft ^1; mean 30 to 100 mph ^-1
    at frequency 1 Hz, scale 100 m, mean 50 m/s is 2
gust/resonant-peak-factor
    frequency 0.3 to 1 Hz rises; time 600 to 3600 s rises
    at frequency 1 Hz, time 7.38905609893065 s is 2.2885
gust/resonant-response
    damping 0.005 to 0.05 ^-0.5; spectrum 0.01 to 0.2 ^0.5; over_height 0.1 to 1 ^0.5; over_breadth 0.1 to 1 ^0.5
    over_depth 0.1 to 1 rises
    swap over_height over_breadth; at damping 0.01, spectrum 0.04, over_height 1, over_breadth 1, over_depth 1 is 2
gust/rigid-factor
    peak 3 to 4 falls; intensity 0.15 to 0.3 falls; background 0.7 to 0.95 rises
    swap peak intensity; at background 1 is 0.925; at intensity 0 is 0.925
gust/size-ratio
    factor 4 to 16 ^1; frequency 0.3 to 1 Hz ^1; size 5 to 100 ft ^1; mean 30 to 100 mph ^-1
    at factor 4.6, frequency 1 Hz, size 10 m, mean 10 m/s is 4.6
gust/spectrum
    reduced 0.5 to 10 falls
    at reduced 0 is 0; at reduced 1e15 nears 0
gust/swaying-structure
    height 8 to 20 ft falls; breadth 10 to 200 ft falls; depth 0.2 to 1 ft falls; frequency 0.3 to 1 Hz falls
    damping 0.005 to 0.05 falls; speed 60 to 180 mph rises; mean_factor 0.45 to 0.8 rises
    mean_power 0.1 to 0.25 falls; turbulence_factor 0.15 to 0.3 matters; length 300 to 700 ft matters
    length_power 0.1 to 0.35 matters; least 15 to 30 ft matters
    at height 0 ft refused; at damping 0 refused; at speed 0 mph refused; at frequency 1.1 Hz refused
    at frequency 0 Hz refused
gust/turbulence-intensity
    factor 0.15 to 0.3 ^1; reference 30 to 35 ft ^0.1666666666666667; equivalent 15 to 60 ft ^-0.1666666666666667
    at reference 33 ft, equivalent 33 ft is 1 factor
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
loads/pressure-at-height
    mean 5 to 60 psf ^1; eccentricity 0.1 to 0.5 ft rises; height 6 to 10 ft falls; above 0.5 to 3 ft rises
    at eccentricity 0 ft is 1 mean; at eccentricity 0.05 ft, height 1 ft, above 0.5 ft is 1.3 mean
    at eccentricity 0.05 ft, height 1 ft, above -0.5 ft is 0.7 mean; at height 0 ft gives no number
loads/rail
    pressure 5 to 60 psf ^1; diameter 1 to 3 in ^1
    at pressure 24 psf, diameter 2 in is 4 lb/ft
loads/row-share
    to_other 1 to 5 ft ^1; apart 5 to 10 ft ^-1
    at to_other 3 ft, apart 6 ft is 0.5; at apart 0 ft gives no number
loads/service-moment
    factor 0.6 to 1 ^1; moment 1 to 30 kip-ft ^1
    at factor 0.6 is 0.6 moment
loads/service-shear
    factor 0.6 to 1 ^1; shear 200 to 3000 lbf ^1
    at factor 0.6 is 0.6 shear
loads/shared-row
    pressure 5 to 60 psf ^1; strip 1 to 6 ft ^1; share 0.1 to 1 ^1
    at pressure 10 psf, strip 4 ft, share 0.5 is 20 lb/ft
nds-2018/adjusted-elastic-modulus
    reference 800 to 1900 ksi ^1; wet 0.9 to 1 ^1; temperature 0.9 to 1 ^1; incising 0.95 to 1 ^1
    at wet 1, temperature 1, incising 1 is 1 reference
nds-2018/allowable-bending-stress
    reference 500 to 2000 psi ^1; duration 0.9 to 1.6 ^1; wet 0.85 to 1 ^1; temperature 0.5 to 1 ^1
    stability 0.5 to 1 ^1; size 0.8 to 1.5 ^1; flat 1 to 1.2 ^1; incising 0.8 to 1 ^1; repetitive 1 to 1.15 ^1
    at duration 1, wet 1, temperature 1, stability 1, size 1, flat 1, incising 1, repetitive 1 is 1 reference
nds-2018/allowable-shear-stress
    reference 100 to 200 psi ^1; duration 0.9 to 1.6 ^1; wet 0.85 to 1 ^1; temperature 0.5 to 1 ^1
    incising 0.8 to 1 ^1
    at duration 1, wet 1, temperature 1, incising 1 is 1 reference
nds-2018/lrfd-bending-stress
    reference 500 to 2000 psi ^1; factors 0.5 to 1.5 ^1; conversion 2 to 3 ^1; resistance 0.7 to 1 ^1
    time 0.6 to 1 ^1
    at factors 1, conversion 1, resistance 1, time 1 is 1 reference
nds-2018/lrfd-shear-stress
    reference 100 to 200 psi ^1; factors 0.5 to 1.5 ^1; conversion 2 to 3 ^1; resistance 0.7 to 1 ^1
    time 0.6 to 1 ^1
    at factors 1, conversion 1, resistance 1, time 1 is 1 reference
nds-2018/moment
    stress 500 to 3000 psi ^1; modulus 5 to 50 in³ ^1
    at stress 1 ksi, modulus 12 in³ is 1 kip-ft
nds-2018/shear
    stress 100 to 300 psi ^1; area 9 to 60 in² ^1
    at stress 150 psi, area 10 in² is 1000 lbf
nds-2018/size-factor
    foot 11 to 13 in rises; depth 5 to 14 in falls
    at foot 12 in, depth 12 in is 1; at foot 512 in, depth 1 in is 2
screen/chain-link-definitions
    clear 0.11 to 0.13 turns; centres 0.11 to 0.13 turns; twice 0.12 to 0.14 turns
    swap clear centres; swap clear twice; at clear 0.1, centres 0.1, twice 0.1 is 0 %
    at clear 0.1, centres 0.1, twice 0.12 is 20 %
screen/chain-link-solidity
    mesh 1 to 3 in falls; wire 0.1 to 0.2 in rises
    at wire 0 in is 0; at mesh 0 in is 1
screen/chain-link-solidity-centres
    mesh 1 to 3 in falls; wire 0.1 to 0.2 in rises
    at wire 0 in is 0; at mesh 1 in, wire 1 in is 1; at mesh 2 in, wire 1 in is 0.75
screen/chain-link-solidity-twice
    mesh 1 to 3 in ^-1; wire 0.1 to 0.2 in ^1
    at mesh 2 in, wire 0.1 in is 0.1
screen/chain-link-weight
    mesh 1 to 3 in falls; wire 0.1 to 0.2 in rises; unit_weight 480 to 500 psf/ft ^1
    at mesh 0 in, wire 2 ft, unit_weight 100 psf/ft is 314.1592653589793 psf
screen/combined-solidity
    first 0 to 0.99 rises; second 0 to 0.99 rises
    swap first second; at first 0 is 1 second; at first 1 is 1
screen/drag-coefficient
    factor 0.1 to 1 ^1
    at factor 0.75 is 1
screen/drag-of-wire
    solidity 0 to 0.95 rises
    at solidity 0 is 0; at solidity 1 is 4/3; at solidity 1.1 refused; at solidity -0.1 refused
screen/equivalent-round
    loss 0.5 to 20 rises; mesh_factor 1 to 2.1 falls; guess 0.1 to 5 turns
    at loss 0, guess 0 is 0; at loss 1.65, mesh_factor 1.3, guess 1 is 1
screen/equivalent-solidity
    loss 0.1 to 50 rises
    at loss 0 is 0; at loss 1.65 is 0.5; at loss 1e9 nears 1; at loss -0.1 refused
screen/load-factor
    loss 0.01 to 100 rises
    at loss 0 is 0; at loss 2 is 2/3; at loss 1e9 nears 1; at loss -0.1 refused
screen/load-factor-of-through-velocity
    through 0.05 to 0.95 falls
    at through 0 is 1; at through 1 is 0
screen/load-factor-plate
    solidity 0 to 0.95 rises
    at solidity 0 is 0; at solidity 1 is 1; at solidity 1.1 refused; at solidity -0.1 refused
screen/load-factor-tested
    pressure 50 to 300 Pa rises; permeability 100 to 1000 cfm/ft² falls
    at pressure 0 Pa refused; at permeability 0 cfm/ft² refused
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
screen/oblique-share
    loss 0.1 to 50 rises; angle 5 to 45 ° falls
    at angle 0 ° is 1; at loss 1e9 nears 1; at loss 0 refused; at angle 46 ° refused; at angle -1 ° refused
screen/permeability-loss
    pressure 50 to 300 Pa ^1; density 1 to 1.3 kg/m³ ^-1; permeability 100 to 1000 cfm/ft² ^-2
    at pressure 100 Pa, density 2 kg/m³, permeability 1000 L/(m² s) is 100
screen/share-at-angle
    oblique 0.1 to 1 ^1; square 0.1 to 1 ^-1
    at square 0.5, oblique 0.25 is 0.5; at square 0 gives no number
screen/solidity-of-quotient
    quotient 0.05 to 20 rises
    at quotient 0 is 0; at quotient 1 is 0.5; at quotient 1e9 nears 1
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
screen/wire-of-gauge
    gauge of 6 9 11 11.5 falls
    at gauge 6 is 0.192 in; at gauge 9 is 0.148 in; at gauge 11 is 0.12 in; at gauge 11.5 is 0.113 in
    at gauge 7 refused; at gauge 0 refused
section/girth-diameter
    girth 5 to 20 in ^1
    at girth 31.41592653589793 in is 10 in
section/rectangle-area
    breadth 2 to 6 in ^1; depth 2 to 12 in ^1
    swap breadth depth; at breadth 3 in, depth 4 in is 12 in²
section/rectangle-elastic-modulus
    breadth 2 to 6 in ^1; depth 2 to 12 in ^2
    at breadth 3 in, depth 4 in is 8 in³
section/rectangle-second-moment
    breadth 2 to 6 in ^1; depth 2 to 12 in ^3
    at breadth 3 in, depth 4 in is 16 in⁴
section/rectangle-torsional-constant
    long 4 to 8 in rises; short 2 to 4 in rises
    at long 2 in, short 2 in is 2.2533333333333334 in⁴
section/round-tube
    diameter 2 to 4 in rises; wall 0.05 to 0.9 in rises
    at diameter 6 in, wall 3 in is 36 in³; at diameter 0 in refused; at wall 0 in refused
    at diameter 2 in, wall 1.01 in refused
section/rounded-square-area
    side 2 to 6 in rises; straight 1 to 4 in rises; radius 0.1 to 0.8 in rises
    at side 3 in, straight 3 in, radius 0 in is 9 in²
    at side 20 in, straight 0 in, radius 10 in is 314.1592653589793 in²
section/rounded-square-outline
    straight 1 to 5 in rises; radius 0.1 to 1 in rises
    at straight 1 in, radius 0 in is 4 in
section/rounded-square-plastic-modulus
    side 2 to 6 in rises; straight 1 to 4 in rises; radius 0.1 to 0.8 in rises
    at side 4 in, straight 4 in, radius 0 in is 16 in³; at side 6 in, straight 0 in, radius 3 in is 36 in³
section/rounded-square-second-moment
    side 2 to 6 in rises; straight 1 to 4 in rises; radius 0.1 to 0.8 in rises
    at side 12 in, straight 12 in, radius 0 in is 1728 in⁴
    at side 4 in, straight 0 in, radius 2 in is 12.566370614359172 in⁴
section/rounded-square-straight-side
    side 2 to 6 in rises; radius 0.1 to 0.8 in falls
    at radius 0 in is 1 side; at side 4 in, radius 0.5 in is 3 in
section/rusted-corner
    corner 0.2 to 0.8 in rises; rust 0 to 0.1 in falls
    at rust 0 in is 1 corner; at corner 0.4 in, rust 0.1 in is 0.3 in
section/rusted-diameter
    diameter 1.9 to 4 in rises; rust 0 to 0.1 in falls
    at rust 0 in is 1 diameter; at diameter 3 in, rust 0.1 in is 2.8 in
section/rusted-wall
    wall 0.1 to 0.3 in rises; rust 0 to 0.1 in falls
    at rust 0 in is 1 wall; at wall 0.2 in, rust 0.2 in is 0 in
section/rusted-width
    width 2 to 6 in rises; rust 0 to 0.1 in falls
    at rust 0 in is 1 width; at width 3 in, rust 0.1 in is 2.8 in
section/square-tube
    width 2 to 6 in rises; wall 0.1 to 0.4 in rises
    at width 0 in refused; at wall 0 in refused; at width 2 in, wall 0.51 in refused
section/square-tube-area
    outer 10 to 36 in² rises; inner 2 to 9 in² falls
    at inner 0 in² is 1 outer; at outer 9 in², inner 4 in² is 5 in²
section/square-tube-corner
    wall 0.05 to 0.4 in ^1
    at wall 0.2 in is 0.4 in
section/square-tube-elastic-modulus
    second_moment 2 to 36 in⁴ ^1; width 2 to 6 in ^-1
    at second_moment 10 in⁴, width 4 in is 5 in³
section/square-tube-inner-corner
    corner 0.4 to 0.8 in rises; wall 0.05 to 0.3 in falls
    at wall 0 in is 1 corner; at corner 1 in, wall 0.5 in is 0.5 in
section/square-tube-inner-width
    width 2 to 6 in rises; wall 0.05 to 0.4 in falls
    at wall 0 in is 1 width; at width 4 in, wall 0.5 in is 3 in
section/square-tube-midline-corner
    corner 0.3 to 0.8 in rises; wall 0.05 to 0.3 in falls
    at wall 0 in is 1 corner; at corner 0.5 in, wall 0.2 in is 0.4 in
section/square-tube-midline-width
    width 2 to 6 in rises; wall 0.05 to 0.4 in falls
    at wall 0 in is 1 width; at width 4 in, wall 0.5 in is 3.5 in
section/square-tube-plastic-modulus
    outer 10 to 36 in³ rises; inner 2 to 9 in³ falls
    at inner 0 in³ is 1 outer; at outer 9 in³, inner 4 in³ is 5 in³
section/square-tube-radius-of-gyration
    second_moment 2 to 36 in⁴ ^0.5; area 1 to 6 in² ^-0.5
    at second_moment 8 in⁴, area 2 in² is 2 in
section/square-tube-second-moment
    outer 10 to 36 in⁴ rises; inner 2 to 9 in⁴ falls
    at inner 0 in⁴ is 1 outer; at outer 9 in⁴, inner 4 in⁴ is 5 in⁴
section/square-tube-torsional-constant
    enclosed 2 to 30 in² ^2; midline 6 to 24 in ^-1; wall 0.05 to 0.4 in ^1
    at enclosed 1 in², midline 4 in, wall 1 in is 1 in⁴
section/timber-shear-modulus
    elastic 500 to 2000 ksi ^1; ratio 10 to 20 ^-1
    at ratio 1 is 1 elastic
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
section/tube-torsional-constant
    diameter 2 to 4 in rises; inner 0 to 1.9 in falls
    at diameter 2 in, inner 2 in is 0 in⁴; at diameter 4 in, inner 0 in is 25.132741228718345 in⁴
section/tube-torsional-modulus
    constant 1 to 20 in⁴ ^1; diameter 2 to 4 in ^-1
    at constant 10 in⁴, diameter 4 in is 5 in³
section/tube-weight
    diameter 2 to 4 in rises; wall 0.05 to 0.3 in rises; unit_weight 480 to 500 psf/ft ^1
    at wall 0 in is 0 lb/ft; at diameter 2 ft, wall 1 ft, unit_weight 100 psf/ft is 314.1592653589793 lb/ft
section/weight
    unit_weight 20 to 500 psf/ft ^1; area 0.4 to 40 in² ^1
    at unit_weight 144 psf/ft, area 1 in² is 1 lb/ft
statics/base-moment
    force 50 to 5000 lbf ^1; arm 1 to 12 ft ^1
    at force 100 lbf, arm 5 ft is 500 lb-ft
statics/cantilever-moment
    load 1 to 200 lb/ft ^1; height 3 to 20 ft ^2
    at load 2 lb/ft, height 10 ft is 100 lb-ft
statics/cantilever-shear
    load 1 to 200 lb/ft ^1; height 3 to 20 ft ^1
    at load 2 lb/ft, height 10 ft is 20 lbf
statics/post-share
    near 0 to 3 ft falls; far 4 to 8 ft rises; load_near 5 to 500 lb/ft rises; load_far 5 to 500 lb/ft rises
    bay 12 to 20 ft rises
    at near 0 ft, far 12 ft, bay 12 ft, load_near 10 lb/ft, load_far 10 lb/ft is 60 lbf
    at near 4 ft, far 4 ft is 0 lbf
statics/resultant-moment
    one 0.1 to 30 kip-ft rises; other 0.1 to 30 kip-ft rises
    swap one other; at other 0 kip-ft is 1 one; at one 3 kip-ft, other 4 kip-ft is 5 kip-ft
sway/even-bend
    weight 1 to 60 lb/ft ^1; from 0 to 2 ft falls; to 3 to 12 ft rises; elastic 28000 to 30000 ksi ^-1
    second_moment 0.5 to 10 in⁴ ^-1
    at weight 12 N/m, from 0 m, to 1 m, elastic 1 Pa, second_moment 1 m⁴ is 1 m
sway/even-turn
    weight 1 to 60 lb/ft ^1; from 0 to 2 ft falls; to 3 to 12 ft rises; stiffness 5000 to 500000 lb-ft/rad ^-1
    at weight 3 N/m, from 0 m, to 1 m, stiffness 1 N m/rad is 1 m
sway/first-frequency
    gravity 32 to 33 ft/s² ^0.5; lean 0.01 to 100 in ^-0.5
sway/weight-bend
    weight 1 to 60 lbf ^1; height 3 to 12 ft ^3; elastic 28000 to 30000 ksi ^-1; second_moment 0.5 to 10 in⁴ ^-1
    at weight 3 N, height 1 m, elastic 1 Pa, second_moment 1 m⁴ is 1 m
sway/weight-turn
    weight 1 to 60 lbf ^1; height 3 to 12 ft ^2; stiffness 5000 to 500000 lb-ft/rad ^-1
    at weight 1 N, height 1 m, stiffness 1 N m/rad is 1 m
units/length
    reading 0.1 to 50 ft ^1
    at reading 1 ft is 0.3048 m
verdict/axial-ratio
    demand 50 to 5000 lbf ^1; capacity 50 to 5000 lbf ^-1
    at demand 300 lbf, capacity 400 lbf is 0.75
verdict/corner-moment
    first 0.1 to 30 kip-ft rises; second 0.1 to 30 kip-ft rises
    swap first second; at second 0 kip-ft is 0.75 first; at first 3 kip-ft, second 4 kip-ft is 3.75 kip-ft
verdict/corner-shear
    first 50 to 5000 lbf rises; second 50 to 5000 lbf rises
    swap first second; at second 0 lbf is 0.75 first; at first 300 lbf, second 400 lbf is 375 lbf
verdict/frame-over-hand
    frame 0.1 to 30 kip-ft ^1; hand 0.1 to 30 kip-ft ^-1
    at frame 3 kip-ft, hand 4 kip-ft is 0.75
verdict/frequency-ratio
    least 0.5 to 2 Hz ^1; frequency 0.5 to 9 Hz ^-1
    at least 1 Hz, frequency 4 Hz is 0.25
verdict/frequency-with-air
    frequency 0.5 to 9 Hz ^1; share 0.5 to 1 ^1
    at frequency 2 Hz, share 0.7 is 1.4 Hz
verdict/limit-gust
    gust 30 to 180 mph ^1; ratio 0.1 to 10 ^-0.5
    at ratio 1 is 1 gust; at ratio 4 is 0.5 gust; at ratio 0 gives no number
verdict/moment-ratio
    demand 0.1 to 30 kip-ft ^1; capacity 1 to 20 kip-ft ^-1
    at demand 0 kip-ft is 0; at demand -3 kip-ft, capacity 4 kip-ft is 0.75; at capacity 0 kip-ft gives no number
verdict/shear-ratio
    demand 50 to 5000 lbf ^1; capacity 1000 to 50000 lbf ^-1
    at demand 0 lbf is 0; at demand -3 kip, capacity 4 kip is 0.75; at capacity 0 lbf gives no number
verdict/square-corner-moment
    first 0.1 to 30 kip-ft rises; second 0.1 to 30 kip-ft rises
    swap first second; at second 0 kip-ft is 0.75 first; at first 3 kip-ft, second 5 kip-ft is 6 kip-ft
verdict/square-corner-shear
    first 50 to 5000 lbf rises; second 50 to 5000 lbf rises
    swap first second; at second 0 lbf is 0.75 first; at first 300 lbf, second 500 lbf is 600 lbf
windows/openings-change
    solidity 0.7 to 1 rises; window_width 4 to 24 in falls; window_height 4 to 12 in falls
    windows_per_bay 1 to 8 falls; bay_width 8 to 12 ft rises; cloth_height 6 to 10 ft rises
    swap window_width window_height; swap bay_width cloth_height; at windows_per_bay 0 is 0
    at windows_per_bay -1 refused; at solidity 0 refused; at solidity 1.01 refused; at window_width 0 in refused
    at window_height 0 in refused; at bay_width 0 ft refused; at cloth_height 0 ft refused
    at windows_per_bay 1000 refused
";

/// How often each entry is sampled.
const CASES: u32 = 16;

/// How a result goes with one input.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Way {
    Rises,
    Falls,
    NeverFalls,
    NeverRises,
    Power(f64),
    Turns,
    Matters,
    Nothing,
}

/// Where one input is sampled, in a unit of its kind, and how the result goes with it.
struct Sampled {
    field: &'static Field,
    range: Range,
    unit: &'static str,
    way: Way,
}

/// The values of an input.
enum Range {
    Between(f64, f64),
    OneOf(Vec<f64>),
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
            [key, from, "to", to, ref rest @ ..] => {
                self.sample(key, Range::Between(number(from)?, number(to)?), rest)?;
            }
            [key, "of", ref rest @ ..] => {
                let values: Vec<f64> = rest.iter().map_while(|word| word.parse().ok()).collect();
                let rest = &rest[values.len()..];
                self.sample(key, Range::OneOf(values), rest)?;
            }
            ["at", ..] => {
                let at = self.place(claim)?;
                self.at.push(at);
            }
            _ => return Err("no such claim".into()),
        }
        Ok(())
    }

    /// Reads the unit of an input, if it has one, and the way the result goes with it.
    fn sample(&mut self, key: &str, range: Range, rest: &[&'static str]) -> Result<(), String> {
        let (unit, way) = match *rest {
            [ref unit @ .., "never", "falls"] => (unit, Way::NeverFalls),
            [ref unit @ .., "never", "rises"] => (unit, Way::NeverRises),
            [ref unit @ .., "rises"] => (unit, Way::Rises),
            [ref unit @ .., "falls"] => (unit, Way::Falls),
            [ref unit @ .., "turns"] => (unit, Way::Turns),
            [ref unit @ .., "matters"] => (unit, Way::Matters),
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
        let rising = match &range {
            Range::Between(from, to) => from < to && (*from > 0.0 || !matches!(way, Way::Power(_))),
            Range::OneOf(values) => values.len() > 1 && values.windows(2).all(|two| two[0] < two[1]),
        };
        if !rising {
            return Err("that is no range".into());
        }
        self.sampled.push(Sampled { field, range, unit, way });
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

    /// Whether each working is the solution of a frame, a thousand times the work of a formula: a few samples must do.
    fn solves_a_frame(&self) -> bool {
        self.card().name.starts_with("frame/")
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
        match &self.range {
            Range::Between(from, to) => from * (1.0 - share) + to * share,
            Range::OneOf(values) => values[((share * values.len() as f64) as usize).min(values.len() - 1)],
        }
    }

    /// Shares of the range at which the way of the result is looked at: two somewhere, or all along where two would
    /// miss a turn.
    fn places(&self, one: f64, other: f64) -> Vec<f64> {
        match (&self.range, self.way) {
            (Range::OneOf(values), _) => {
                (0..values.len()).map(|at| (at as f64 + 0.5) / values.len() as f64).collect()
            }
            (_, Way::Turns) => (0..=6).map(|step| f64::from(step) / 6.0).collect(),
            _ => {
                let low = one * 0.9;
                vec![low, low + (1.0 - low) * (0.1 + 0.9 * other)]
            }
        }
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
    let (mut entries, mut wrong) = (Vec::new(), Vec::new());
    for entry in &parts(TABLE) {
        match read(entry) {
            Ok(entry) => entries.push(entry),
            Err(why) => wrong.push(why),
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    entries
}

fn work(listed: &Listed, inputs: &Inputs) -> Result<Value, Vec<Mistake>> {
    worked(listed, inputs).0
}

/// The result, and the name of a step on the way to it that is no number, if there is one.
fn worked(listed: &Listed, inputs: &Inputs) -> (Result<Value, Vec<Mistake>>, Option<&'static str>) {
    let given = inputs.iter().map(|(key, text)| (*key, text.as_str())).collect();
    let mut ledger = Vec::new();
    let result = listed.work(&mut Arguments::new(given), &mut ledger);
    let no_number = ledger.iter().find_map(|step| {
        let (name, value) = match step {
            Step::Worked { card, given, result } => {
                (card.name, given.iter().chain([result]).map(|value| value.si).find(|si| si.is_nan())?)
            }
            Step::Judged { symbol, value, .. } => (*symbol, value.si),
            Step::Added { symbol, result, .. } => (*symbol, result.si),
            Step::Solved { symbol, residual, .. } => (*symbol, *residual),
            Step::Heading(_) => return None,
        };
        value.is_nan().then_some(name)
    });
    (result, no_number)
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
    let cases = if claims.solves_a_frame() { 3 } else { CASES };
    let config = Config { cases, failure_persistence: None, ..Config::default() };
    let rng = TestRng::deterministic_rng(RngAlgorithm::ChaCha);
    let shares = vec(0.0..1.0_f64, claims.sampled.len() + more);
    let mut runner = TestRunner::new_with_rng(config, rng);
    runner.run(&shares, |shares| holds(&shares)).map_err(|failed| {
        let said = failed.to_string();
        // Where in the ranges it failed says the claim itself; the shares of them say nothing.
        said.lines().next().unwrap_or_default().to_owned()
    })
}

/// Each result goes with each of its inputs as the entry says.
fn goes_with_its_inputs(claims: &Claims) -> Held {
    for (at, one) in claims.sampled.iter().enumerate() {
        let (rose, fell) = (Cell::new(0), Cell::new(0));
        sampled(claims, 1, |shares| {
            let inputs = claims.inputs(shares);
            let of = |share| claims.number(&with(&inputs, &[(one.field.key, one.text(share))]));
            let places = one.places(shares[at], shares[claims.sampled.len()]);
            let results = places.iter().map(|place| of(*place)).collect::<Result<Vec<_>, _>>()?;
            for (two, places) in results.windows(2).zip(places.windows(2)) {
                let (before, now) = (two[0], two[1]);
                let slack = 1e-12 * before.abs().max(now.abs());
                let (rises, falls) = (now > before + slack, now < before - slack);
                let held = match one.way {
                    Way::Rises => rises,
                    Way::Falls => falls,
                    Way::NeverFalls => !falls,
                    Way::NeverRises => !rises,
                    Way::Nothing => (now - before).abs() <= 1e-9 * now.abs(),
                    Way::Turns | Way::Matters => true,
                    Way::Power(power) => {
                        let wanted = (one.value(places[1]) / one.value(places[0])).powf(power);
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
            Way::Matters => rose.get() + fell.get() > 0,
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
            let inputs = with(&anywhere, &fixed);
            let result = claims.work(&inputs);
            let near = |value: &Value, wanted: f64| {
                let off = (value.si - wanted).abs();
                // Beside the results inside the ranges a nought is measured.
                off <= at.tolerance * wanted.abs()
                    || off <= 1e-3 * at.tolerance * claims.work(&anywhere).map_or(0.0, |value| value.si.abs())
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

/// An equation that is solved on the way has next to nothing left, by its own word.
fn leaves_nothing_of_an_equation(claims: &Claims) -> Held {
    sampled(claims, 0, |shares| {
        let inputs = claims.inputs(shares);
        let given = inputs.iter().map(|(key, text)| (*key, text.as_str())).collect();
        let mut ledger = Vec::new();
        let _ = claims.listed.work(&mut Arguments::new(given), &mut ledger);
        for step in ledger {
            if let Step::Solved { symbol, rounds, residual, .. } = step
                && (residual.abs() > 1e-9 || rounds == 0)
            {
                return Err(claims.failed(&format!("{symbol}: {residual} left after {rounds}"), &inputs));
            }
        }
        Ok(())
    })
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
        let one_unit =
            |field: &Field| [Dimension::Years, Dimension::Frequency].contains(&field.measure.dimension());
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
        [0.0, -one.value(1.0), 1e-300, 1e300, -1e300]
            .map(|value| (one.field.key, format!("{value:e} {}", one.unit)))
    };
    let mut tried = Vec::new();
    for (at, one) in claims.sampled.iter().enumerate() {
        for edge in edges(one) {
            tried.push(with(&middle, std::slice::from_ref(&edge)));
            let others = if claims.solves_a_frame() { &[] } else { &claims.sampled[at + 1..] };
            for other in others.iter().flat_map(edges) {
                tried.push(with(&middle, &[edge.clone(), other]));
            }
        }
    }
    for inputs in tried {
        let (result, no_number) = worked(claims.listed, &inputs);
        let clear = match &result {
            // A result through a step that is no number is a chance one.
            Ok(value) => value.si.is_finite() && no_number.is_none(),
            Err(told) => match &told[..] {
                [Mistake::OutOfRange(error)] => !error.value.si.is_nan() && !error.what.is_empty(),
                [Mistake::NoNumber(key)] => *key == claims.card().key,
                _ => false,
            },
        };
        if !clear {
            let name = claims.card().name;
            return Err(format!("{name}: {result:?}, no number: {no_number:?}; inputs {inputs:?}"));
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
fn an_equation_that_is_solved_has_next_to_nothing_left() {
    all_hold(leaves_nothing_of_an_equation);
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
        let (symbol, unit) = unit_in(field, System::Si);
        (*key, format!("{} {symbol}", si / unit).trim_end().to_owned())
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

/// The reactions at the ends of a frame and the moments there, each with its place, for a sum about the origin.
fn balance(ends: &[[f64; 3]], forces: &[f64], moments: &[f64]) -> ([f64; 3], [f64; 3]) {
    let (mut force, mut moment) = ([0.0; 3], [0.0; 3]);
    for (at, end) in ends.iter().enumerate() {
        let (own, turn) = (&forces[3 * at..], &moments[3 * at..]);
        for axis in 0..3 {
            let (next, last) = ((axis + 1) % 3, (axis + 2) % 3);
            force[axis] += own[axis];
            moment[axis] += turn[axis] + end[next] * own[last] - end[last] * own[next];
        }
    }
    (force, moment)
}

/// Whether sums are nought beside the size of what is summed up.
fn vanish(sums: &[f64], size: f64) -> Result<(), TestCaseError> {
    if sums.iter().all(|sum| sum.abs() <= 1e-9 * size) {
        Ok(())
    } else {
        Err(TestCaseError::fail(format!("{sums:?} are left over of {size}")))
    }
}

#[test]
fn the_ends_of_three_members_that_meet_in_space_hold_what_acts_on_them() {
    let (length, load, moment) = ((1.5, 3.0), (-3e3, 3e3), (-2e3, 2e3));
    holds([length, length, length, load, load, load, load, moment], |[x, y, z, w, fx, fy, fz, turn]| {
        let all = |rule: &str| -> Result<Vec<f64>, TestCaseError> {
            let reaction = |number: u32| {
                let given = [
                    ("end_x", x),
                    ("end_y", y),
                    ("end_z", -z),
                    ("roll_x", 0.3),
                    ("roll_y", 0.7),
                    ("roll_z", 1.1),
                    ("modulus", 2e11),
                    ("shear_modulus", 8e10),
                    ("area", 1e-3),
                    ("second_moment_y", 4e-7),
                    ("second_moment_z", 9e-7),
                    ("torsion", 1e-6),
                    ("load", w),
                    ("force_x", fx),
                    ("force_y", fy),
                    ("force_z", fz),
                    ("moment_x", turn),
                    ("moment_y", -0.5 * turn),
                    ("moment_z", 0.2 * turn),
                    ("number", f64::from(number)),
                ];
                of(rule, &given)
            };
            (1..=9).map(reaction).collect()
        };
        let ends = [[x, 0.0, 0.0], [0.0, y, 0.0], [0.0, 0.0, -z]];
        let (force, moment) = balance(&ends, &all("frame/corner-force")?, &all("frame/corner-moment")?);
        // The load along y on the member along x has its middle half way out.
        vanish(&[force[0] + fx, force[1] + fy + w * x, force[2] + fz], 1e4)?;
        let about_z = moment[2] + 0.2 * turn + w * x * x / 2.0;
        vanish(&[moment[0] + turn, moment[1] - 0.5 * turn, about_z], 1e4)
    });
}

#[test]
fn the_ends_of_a_chain_of_members_hold_what_acts_on_them() {
    let (place, load) = ((-0.5, 0.5), (-3e3, 3e3));
    holds([place, place, place, load, load, load], |[one, two, three, fx, fy, turn]| {
        let (second, third, last) = ([1.0, 1.0 + one, two], [2.0, 1.0, 0.5 + three], [3.0, one, 1.5 + two]);
        let all = |rule: &str| -> Result<Vec<f64>, TestCaseError> {
            let reaction = |number: u32| {
                let given = [
                    ("x_2", second[0]),
                    ("y_2", second[1]),
                    ("z_2", second[2]),
                    ("x_3", third[0]),
                    ("y_3", third[1]),
                    ("z_3", third[2]),
                    ("x_4", last[0]),
                    ("y_4", last[1]),
                    ("z_4", last[2]),
                    ("modulus", 2e11),
                    ("shear_modulus", 8e10),
                    ("area", 1e-3),
                    ("second_moment", 4e-7),
                    ("middle_second_moment", 9e-7),
                    ("torsion", 1e-6),
                    ("force_x", fx),
                    ("force_y", fy),
                    ("moment_z", turn),
                    ("number", f64::from(number)),
                ];
                of(rule, &given)
            };
            (1..=6).map(reaction).collect()
        };
        let (force, moment) =
            balance(&[[0.0; 3], last], &all("frame/chain-force")?, &all("frame/chain-moment")?);
        vanish(&[force[0] + fx, force[1] + fy, force[2]], 1e4)?;
        let about = [
            moment[0] - third[2] * fy,
            moment[1] + second[2] * fx,
            moment[2] + turn - second[1] * fx + third[0] * fy,
        ];
        vanish(&about, 1e4)
    });
}

#[test]
fn cantilevers_that_a_rail_joins_hold_all_of_the_load_and_the_rail_gives_none_of_its_own() {
    holds(
        [(1.5, 3.0), (2.0, 3.5), (100.0, 3e3), (100.0, 3e3), (5e4, 1e6)],
        |[height, bay, end, inner, spring]| {
            for turns in [0.0, 1.0] {
                let sum = |rule: &str| -> Result<f64, TestCaseError> {
                    let at = |number: u32| {
                        let given = [
                            ("uprights", 5.0),
                            ("height", height),
                            ("spacing", bay),
                            ("modulus", 2e11),
                            ("second_moment", 6e-7),
                            ("rail_second_moment", 1e-7),
                            ("end_load", end),
                            ("inner_load", inner),
                            ("turns", turns),
                            ("turning_stiffness", spring),
                            ("number", f64::from(number)),
                        ];
                        of(rule, &given)
                    };
                    (1..=5).map(at).sum()
                };
                let load = (2.0 * end + 3.0 * inner) * height;
                vanish(&[sum("frame/row-shear")? - load, sum("frame/row-rail-force")?], load)?;
                vanish(&[sum("frame/row-moment")? - load * height / 2.0], load * height)?;
            }
            Ok(())
        },
    );
}

#[test]
fn a_braced_post_and_its_brace_hold_the_load_between_them() {
    holds([(2.5, 4.0), (1.0, 2.2), (1.0, 2.0), (100.0, 3e3)], |[height, meeting, out, load]| {
        for turns in [0.0, 1.0] {
            let figure = |rule: &str| {
                let given = [
                    ("height", height),
                    ("brace_height", meeting),
                    ("brace_foot", out),
                    ("modulus", 2e11),
                    ("area", 1e-3),
                    ("second_moment", 6e-7),
                    ("brace_area", 4e-4),
                    ("load", load),
                    ("turns", turns),
                ];
                of(rule, &given)
            };
            let across = figure("frame/braced-force")? * out / out.hypot(meeting);
            let whole = load * height;
            vanish(&[figure("frame/braced-shear")? + across - whole], whole)?;
            let about_foot = figure("frame/braced-moment")? + across * meeting - whole * height / 2.0;
            vanish(&[about_foot], whole * height)?;
        }
        Ok(())
    });
}

#[test]
fn a_cantilever_in_the_frame_is_the_cantilever_of_the_beam_tables() {
    holds([(2.0, 4.0), (0.2, 1.0), (1.2, 2.0), (100.0, 3e3)], |[length, from, to, load]| {
        let (modulus, second_moment) = (("modulus", 2e11), ("second_moment", 6e-7));
        let frame = |rule: &str| {
            let given = [
                ("length", length),
                modulus,
                second_moment,
                ("from", from),
                ("to", to),
                ("load_from", load),
                ("load_to", load),
                ("turns", 0.0),
                ("turning_stiffness", 0.0),
            ];
            of(rule, &given)
        };
        let (load, from, to) = (("load", load), ("from", from), ("to", to));
        near(frame("frame/cantilever-moment")?, of("beam/cantilever-part-moment", &[load, from, to])?)?;
        let given = [load, from, to, ("length", length), ("elastic", 2e11), second_moment];
        near(frame("frame/cantilever-deflection")?, of("beam/cantilever-part-tip", &given)?)
    });
}

/// Two ways to one figure: the elastic line in closed form, and the frame in second order.
#[test]
fn a_cantilever_under_thrust_bends_in_the_frame_as_by_its_elastic_line() {
    holds([(1.5, 3.0), (100.0, 3e3), (100.0, 2e4)], |[length, side, thrust]| {
        let (length, second_moment) = (("length", length), ("second_moment", 6e-7));
        for (frame, line) in [
            ("frame/cantilever-p-delta", "beam/p-delta-tip-load-moment"),
            ("frame/cantilever-p-delta-deflection", "beam/p-delta-tip-load-deflection"),
        ] {
            let ours =
                of(frame, &[length, ("modulus", 2e11), second_moment, ("force", side), ("thrust", thrust)])?;
            let theirs =
                of(line, &[("side", side), ("force", thrust), length, ("elastic", 2e11), second_moment])?;
            if (ours / theirs - 1.0).abs() > 1e-6 {
                return Err(TestCaseError::fail(format!("{frame} is {ours}, {line} {theirs}")));
            }
        }
        Ok(())
    });
}

#[test]
fn a_depth_that_a_force_needs_carries_that_force() {
    let (force, height, width) = ((1e3, 8e3), (0.5, 3.0), (0.3, 0.6));
    holds([force, height, width, (0.0, 1.0)], |[force, height, width, soil]| {
        let (height, width) = (("height", height), ("width", width));
        let (clay, heavy) = (("strength", 3e4 + 6e4 * soil), ("weight", 1.6e4 + 4e3 * soil));
        let (bearing, ground) = (("bearing", 2e4 + 4e4 * soil), ("factor", 2e5 + 4e5 * soil));
        let friction = ("angle", 0.4 + 0.3 * soil);
        let mixed = [("cohesion", 1e4 * soil), friction, heavy];
        for (rule, capacity, soil) in [
            ("footing/broms-clay", "footing/broms-clay-capacity", &[clay][..]),
            ("footing/broms-sand", "footing/broms-sand-capacity", &[friction, heavy]),
            ("footing/brinch-hansen", "footing/brinch-hansen-capacity", &mixed),
            ("footing/nzbc", "footing/nzbc-capacity", &[clay]),
            ("footing/pd6547", "footing/pd6547-capacity", &[ground]),
            ("footing/ep486-nonconstrained", "footing/ep486-nonconstrained-capacity", &[bearing]),
            ("footing/ep486-constrained", "footing/ep486-constrained-capacity", &[bearing]),
            ("footing/ibc-nonconstrained", "footing/ibc-nonconstrained-capacity", &[bearing]),
            ("footing/ibc-constrained", "footing/ibc-constrained-capacity", &[bearing]),
        ] {
            let depth = of(rule, &[&[("force", force), height, width], soil].concat())?;
            let carried = of(capacity, &[&[("depth", depth), height, width], soil].concat())?;
            if (carried / force - 1.0).abs() > 1e-6 {
                return Err(TestCaseError::fail(format!("{rule}: {depth} m carries {carried} of {force} N")));
            }
        }
        Ok(())
    });
}

#[test]
fn equal_spans_by_formula_are_those_of_the_frame_and_hold_their_load() {
    for spans in 1..=5_u32 {
        let (mut reactions, many) = (0.0, f64::from(spans));
        for support in 1..=spans + 1 {
            let given = [("spans", many), ("support", f64::from(support))];
            let frame = [("spans", many), ("loaded_from", 1.0), ("loaded_to", many), ("clamped", 0.0)];
            let frame = [&frame[..], &[("at", f64::from(support))]].concat();
            let reaction = of("beam/equal-spans-reaction", &given).unwrap();
            assert!((reaction - of("frame/continuous-beam-reaction", &frame).unwrap()).abs() < 1e-9);
            let moment = of("beam/equal-spans-support-moment", &given).unwrap();
            assert!((moment + of("frame/continuous-beam-support", &frame).unwrap()).abs() < 1e-9);
            reactions += reaction;
        }
        assert!((reactions - many).abs() < 1e-9, "{spans}");
    }
}
