/** One step of the scale of use. */
export interface UseStep {
  readonly color: string;
  readonly label: string;
}

/** Width of a step: a fifth of the limit [-]. */
export const STEP_WIDTH = 0.2;

/** From light to dark, so that it reads in gray as well; over the limit an accent that is striped as well. */
export const USE_STEPS: readonly UseStep[] = [
  { color: '#e9e3d3', label: '0–20 %' },
  { color: '#c3cbc8', label: '20–40 %' },
  { color: '#95a9b2', label: '40–60 %' },
  { color: '#5f7f8f', label: '60–80 %' },
  { color: '#2c4a5b', label: '80–100 %' },
];

export const OVER_STEP: UseStep = { color: '#e2531f', label: 'over 100 %' };
/** Between the stripes of the accent. */
export const STRIPE_COLOR = '#1c1b18';
/** A stripe and the gap after it [m]. */
export const STRIPE_LENGTH = 0.016;
