/**
 * Numbers that know their unit at compile time. Everything is coherent SI, so no factor ever
 * appears in a formula: brand at a function's border, plain arithmetic inside, one cast at the return.
 */
declare const unitBrand: unique symbol;

/** A number in the coherent SI unit `U`. */
export type Quantity<U extends string> = number & { readonly [unitBrand]: U };

/** [m] */
export type Length = Quantity<'m'>;
/** [rad] */
export type Angle = Quantity<'rad'>;
/** [kg] */
export type Mass = Quantity<'kg'>;
/** [N] */
export type Force = Quantity<'N'>;
/** [N·m] as a moment; not interchangeable with energy. */
export type Torque = Quantity<'N·m'>;
/** [Pa] */
export type Pressure = Quantity<'Pa'>;
/** [W] */
export type Power = Quantity<'W'>;
/** [m/s] */
export type Speed = Quantity<'m/s'>;
/** [rad/s] */
export type AngularSpeed = Quantity<'rad/s'>;
/** [m²] */
export type Area = Quantity<'m²'>;
/** [kg/m³] */
export type Density = Quantity<'kg/m³'>;
/** [kg·m²] */
export type MomentOfInertia = Quantity<'kg·m²'>;
/** [N/m] */
export type Stiffness = Quantity<'N/m'>;

/** [m⁴], second moment of an area or torsion constant */
export type SecondMoment = Quantity<'m⁴'>;
/** [N/m] as a load spread over a length; not interchangeable with a spring rate. */
export type LineForce = Quantity<'N/m of length'>;
/** [Hz], cycles a second; not interchangeable with an angular speed. */
export type Frequency = Quantity<'Hz'>;

/** What a value measures. The kind decides how a text is read and how a value is printed. */
export type QuantityKind =
  | 'length'
  | 'angle'
  | 'mass'
  | 'force'
  | 'torque'
  | 'pressure'
  | 'power'
  | 'speed'
  | 'angularSpeed'
  | 'area'
  | 'density'
  | 'inertia'
  | 'stiffness'
  | 'lineMass'
  | 'secondMoment'
  | 'lineForce'
  | 'frequency'
  | 'ratio'
  | 'count';
