import { inches, type Pressure, poundsForce } from '../quantity/index.ts';

/** Thousands of pounds-force per square inch, as American tables print strengths. */
export const ksi = (value: number): Pressure => ((value * poundsForce(1000)) / inches(1) ** 2) as Pressure;
