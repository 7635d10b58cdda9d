import { expect, test } from 'vitest';
import { degrees, type Figure, megapascals, mm, newtonMeters, newtons } from '../../quantity/index.ts';
import { braceResistance } from './braceJoint.ts';
import { braceFigures, plateJointFigures } from './tubeJointFigures.ts';

/** Steel over 355 MPa, a wall outside the limits, a push and a factor: everything that a printed formula may forget. */
const CHORD = { outside: mm(25.4), wall: mm(2.8), yield: megapascals(420), push: megapascals(90) };
const PART = { id: 'joint', of: 'test' };

const inputsOf = (figures: readonly Figure[], id: string) => {
  const figure = figures.find((one) => one.id === `joint.${id}`)!;
  const inputs = Object.fromEntries(figure.inputs.map(({ name, value }) => [name, value as number]));
  return { value: figure.value, of: (name: string): number => inputs[name]! };
};

test('a brace: the formula on the page with the inputs beside it gives the value', () => {
  const joint = {
    kind: 'Y',
    chord: CHORD,
    brace: { outside: mm(19.05), wall: mm(1.65), angle: degrees(55) },
    partialFactor: 1.5,
  } as const;
  const load = { normal: newtons(900), inPlane: newtonMeters(20), outOfPlane: newtonMeters(10) };
  const figures = braceFigures(joint, braceResistance(joint), load, PART);
  const face = inputsOf(figures, 'normal.face');
  const sin = Math.sin(face.of('θ'));
  const unit = face.of('s') * face.of('fy0') * face.of('t0') ** 2;
  const byHand = ((face.of('γ') ** 0.2 * face.of('kp') * unit) / sin) * (2.8 + 14.2 * face.of('β') ** 2);
  expect(face.value / byHand).toBeCloseTo(1, 12);
  const punching = inputsOf(figures, 'inPlane.punching');
  const ring = (punching.of('fy0') * punching.of('t0') * punching.of('d1') ** 2) / Math.sqrt(3);
  const punchingByHand = (punching.of('s') * ring * (1 + 3 * sin)) / (4 * sin ** 2);
  expect(punching.value / punchingByHand).toBeCloseTo(1, 12);
});

test('a plate across: the same for face and punching', () => {
  const joint = {
    kind: 'transverse',
    chord: CHORD,
    length: mm(22),
    thickness: mm(6),
    partialFactor: 1.5,
  } as const;
  const load = { normal: newtons(900), alongEdge: newtonMeters(20), aboutEdge: newtonMeters(0) };
  const figures = plateJointFigures(joint, load, PART);
  const face = inputsOf(figures, 'normal');
  const unit = face.of('s') * face.of('kp') * face.of('fy0') * face.of('t0') ** 2;
  expect(face.value / (unit * (4 + 20 * (face.of('l') / face.of('d0')) ** 2))).toBeCloseTo(1, 12);
  const use = inputsOf(figures, 'punching');
  const line = use.of('N') / use.of('l') + (6 * use.of('M')) / use.of('l') ** 2;
  const limit = (use.of('s') * 2 * use.of('t0') * use.of('fy0')) / Math.sqrt(3);
  expect(use.value / (line / limit)).toBeCloseTo(1, 12);
});
