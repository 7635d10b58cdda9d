import { derived, type Figure, type FigureInput, figureMaker, type SourceRef } from '../quantity/index.ts';
import type { Stance } from './bike.ts';
import type { StanceChange, SteeringGeometry } from './stance.ts';

const TRAIL: SourceRef = { key: 'cossalter-notes', where: 'normal trail, trail and rake' };
const RIGID = derived('rigid frame on level ground, both tires touching');

const length = (name: string, value: number): FigureInput => ({ name, value, kind: 'length' });
const angle = (name: string, value: number): FigureInput => ({ name, value, kind: 'angle' });

/** The working of one stance; ids are `steering.<stance>.<figure>`. */
export function steeringFigures(design: SteeringGeometry, change: StanceChange, stance: Stance): Figure[] {
  const figure = figureMaker({ id: `steering.${stance.name}`, of: WORDS[stance.name] });
  const radius = length('R', stance.frontRadius);
  const offset = length('d', design.forkOffset);
  const rake = angle('ε', stance.rake);
  const rigid = [
    length('p₀', design.wheelbase),
    angle('head angle₀', design.headAngle),
    length('R_f₀', design.frontRadius),
    length('R_r₀', design.rearRadius),
    length('R_f', change.frontRadius),
    length('R_r', change.rearRadius),
    length('s_f', change.sag),
    length('d_r', change.rearRise),
  ];
  const { headAngle, pitch, normalTrail, trail, flop, wheelbase } = stance;
  return [
    figure(
      'wheelbase',
      'p',
      'wheelbase',
      wheelbase,
      'length',
      'p = |v|·cos(atan2(v_z, v_x) − θ)',
      rigid,
      RIGID,
    ),
    figure(
      'pitch',
      'θ',
      'pitch, nose down positive',
      pitch,
      'angle',
      'θ = atan2(v_z, v_x) − asin((R_f − R_r)/|v|), v = (p₀, R_f₀ − R_r₀) + s_f·u − (0, d_r), u up the steering axis',
      rigid,
      RIGID,
    ),
    figure(
      'headAngle',
      '90° − ε',
      'head angle',
      headAngle,
      'angle',
      'head angle = head angle₀ + θ',
      [angle('head angle₀', design.headAngle), angle('θ', pitch)],
      RIGID,
    ),
    figure(
      'rake',
      'ε',
      'rake',
      stance.rake,
      'angle',
      'ε = 90° − head angle',
      [angle('head angle', headAngle)],
      TRAIL,
    ),
    figure(
      'normalTrail',
      'c_n',
      'normal trail',
      normalTrail,
      'length',
      'c_n = R·sin ε − d',
      [radius, rake, offset],
      TRAIL,
    ),
    figure(
      'trail',
      'c',
      'trail',
      trail,
      'length',
      'c = c_n/cos ε',
      [length('c_n', normalTrail), rake],
      TRAIL,
    ),
    figure(
      'flop',
      'f',
      'wheel flop factor',
      flop,
      'length',
      'f = c_n·sin ε',
      [length('c_n', normalTrail), rake],
      derived('drop of the head for small steering angles, f·δ²/2'),
    ),
  ];
}

const WORDS: Readonly<Record<Stance['name'], string>> = {
  design: 'as designed',
  fitted: 'with the tires now on',
  sag: 'with the tires now on and sag',
};
