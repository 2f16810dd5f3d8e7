/** Every tolerance that a test uses, one a purpose, so that loosening one is seen in review. */

/** A formula against its own published or closed value, relative: double precision with a few operations. */
export const CLOSED_FORM = 1e-9;
/** Against figures that a publication prints with six decimals, relative. */
export const PRINTED_SIX = 1e-6;
/** Against figures that a textbook rounded, relative. */
export const BOOK_ROUNDING = 5e-3;
/** Analytic derivative against a central difference, relative to the larger of both and 1. */
export const DIFFERENCED = 1e-6;
/** Stiffness against second differences of energy, relative (mechanics.md, Accuracy). */
export const ENERGY_DIFFERENCE = 1e-6;
/** An identity that holds by construction, relative: rounding only. */
export const IDENTITY = 1e-10;
/** The same mechanism moved, mirrored or read in other units, relative: rounding through a few hundred operations. */
export const INVARIANCE = 1e-8;
/** Position against the independent solution of the sample's axles, m (mechanics.md asks for 1e-9; both hold 1e-12). */
export const ORACLE_POSITION = 1e-12;
/** Angle against the same, rad. */
export const ORACLE_ANGLE = 1e-11;
/** First derivative against central differences in 50 digits, relative. */
export const ORACLE_SLOPE = 1e-10;
/** Second derivative against the same, relative. */
export const ORACLE_SECOND = 1e-9;
/** A unit's factor against a table that prints seven digits, relative. */
export const PRINTED_SEVEN = 5e-7;
/** A value to SI and back, or through another library's units, relative: a few roundings. */
export const UNIT_ROUND_TRIP = 1e-14;
/** A quantity written with twelve digits and read again, relative. */
export const WRITTEN_DIGITS = 1e-11;
/** Deflections and positions against an independent solver, m: 1e-9 mm as the check case states. */
export const DEFLECTION_M = 1e-12;
/** Angles against an independent solver, rad: 1e-9 deg as the check case states. */
export const DEFLECTION_RAD = 1.8e-11;
/** Wheel rates and slopes of motion ratios against the check case, relative, as it states. */
export const ORACLE_RATE = 1e-7;
/** An extreme over an envelope that is sampled, against a searched one: how far it may fall short, relative. */
export const SAMPLED_EXTREME = 0.05;
/** Joints of the check case in mm and angles in degrees, absolute, as it states: the twelfth digit. */
export const CHECK_CASE = 1e-9;
/** A link's length through its motion, m: rounding of one position. */
export const LINK_LENGTH = 1e-13;
/** Two solvers of the same corner, m: a few roundings times the worst leverage of a random corner. */
export const SECOND_METHOD = 1e-11;
/** The furthest travel against closed conditions, m. */
export const LIMIT = 1e-9;
/** Roll centres and anti effects against the check case, relative, as it states. */
export const CONSTRUCTION = 1e-8;
/** Central differences of positions over travel, m per m and per m², against analytic ones, relative to the larger of both and 1. */
export const DIFFERENCED_SECOND = 1e-5;
/** Travel from a limit, m, beyond which a demanded travel is met to rounding, and how well it is met before. */
export const CLEAR_OF_LIMITS = 1e-3;
export const NEXT_TO_LIMIT = 1e-8;
/** Two values on either side of a place where a law goes over into another, a hundredth of a nanometre apart, relative. */
export const CONTINUOUS = 1e-6;
/** A computed eye against the nearest one that a search finds, m: its rays are a quarter of a degree apart. */
export const NEAREST_EYE = 2e-5;
/** Against figures that a textbook prints with five digits, relative. */
export const BOOK_FIVE = 1e-5;
/** A travel at which something first happens, closed in on by halving, against its closed form, m. */
export const CROSSING = 1e-8;
/** Eigenvalues against an independent library, relative to the largest (mechanics.md, Accuracy). */
export const EIGENVALUE = 1e-8;
/** Root mean squares on a road that are integrated to the finest, against another integration, relative. */
export const ROAD_FINE = 1e-8;
/** The same as they are shown, with the accuracy that is the default. */
export const ROAD_SHOWN = 1e-4;
/** Root mean squares over all of a spectrum in closed form, against a band that leaves next to nothing out, relative. */
export const ROAD_BAND = 1e-6;
/** A car that turns exactly against a form that is linear in its roll or pitch, at a hundredth of a g, relative. */
export const SMALL_ANGLE = 2e-4;
/** The same at about 1 g: a few times the square of two degrees, and what soft tyres lower. */
export const TURNED = 1.2e-2;
/** Against figures that a table prints with four digits, relative. */
export const PRINTED_FOUR = 6e-5;
/** Equilibria of the whole car against SciPy's: loads relative; heights and travels in m, angles in rad. */
export const ORACLE_CASE = 2e-8;
export const ORACLE_CASE_M = 2e-10;
/** A value against the integral of its derivative by trapezes, relative, beside the doubt that the trapezes leave. */
export const INTEGRATED = 1e-9;
/** Kerb strikes: the closed form in m at 2 mm of kerb; SciPy's in m and N, by a cubic between moments. */
export const KERB_CLOSED_M = 5e-8;
export const KERB_ORACLE_M = 2e-6;
export const KERB_ORACLE_LOAD = 2;
/** Work, heat and stores by trapezes over the accepted steps, relative to the heat. */
export const KERB_ENERGY = 5e-4;
export const KERB_MIRROR_M = 1e-9;
/** Peak load with the usual steps against fine ones, relative. */
export const KERB_STEPS = 5e-3;
/** Transfer functions by modes against each frequency solved by itself, relative. */
export const DIRECT_RESPONSE = 1e-8;
/** Root mean squares summed by trapezes over the transfer functions, relative. */
export const ROAD_SUMMED = 2e-4;
/** Polynomials by QR, relative to the size of what they were taken from. */
export const POLYNOMIAL = 1e-9;
/** From a logged channel back to itself, through its table of 241 positions, m or rad. */
export const LOGGED_BACK = 2e-7;
/** Between entries of the mechanism panel's tables, m: a tenth of a pixel where a metre is 2000 of them. */
export const PANEL_INTERPOLATION = 5e-5;
/** The page's reading of them over all travel and steer, m: a fiftieth of a millimetre. */
export const PANEL_READ = 2e-5;
/** A value in the other system of units, share of itself: five parts in a million, as `converted-number.ts` promises. */
export const CONVERTED_SHARE = 5e-6;
