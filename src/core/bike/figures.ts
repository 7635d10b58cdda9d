import type { Build, TireEntry } from '../build/index.ts';
import { derived, type Figure, type FigureInput, figureMaker } from '../quantity/index.ts';
import { bodySources } from '../standards/index.ts';
import type { Layout, MassSummary, TireSize } from './bike.ts';
import { stanceChanges, steeringGeometry } from './stances.ts';
import { steeringFigures } from './steeringFigures.ts';

/** The working of the layout: tires, steering at each stance, neck. */
export function layoutFigures(build: Build, layout: Layout): Figure[] {
  const tires = { rear: layout.rearTire, front: layout.frontTire };
  const fitted = { rear: layout.fitted.rear, front: layout.fitted.front };
  const geometry = steeringGeometry(build, tires);
  const changes = stanceChanges(build, tires, fitted);
  return [
    ...(['rear', 'front'] as const).flatMap((end) => [
      ...tireFigures(`wheels.${end}`, `${end} tire`, build.wheels[end].tire, tires[end]),
      ...(build.wheels[end].fitted
        ? tireFigures(`wheels.${end}.fitted`, `${end} tire now on`, build.wheels[end].fitted, fitted[end])
        : []),
    ]),
    ...(['design', 'fitted', 'sag'] as const).flatMap((name) =>
      steeringFigures(geometry, changes[name], layout.stances[name]),
    ),
    ...neckFigures(build, layout),
  ];
}

/** The working of masses, center and wheel loads. */
export function massFigures(build: Build, layout: Layout, summary: MassSummary): Figure[] {
  const { wheelbase } = layout.stances.design;
  const [ixx, iyy, izz] = summary.inertia;
  const parts = (of: readonly MassSummary['parts'][number][]): FigureInput[] =>
    of.map((part) => ({ name: part.label, value: part.mass, kind: 'mass' as const }));
  const figure = figureMaker({ id: 'mass' }, derived('sum of the parts'));
  const total: FigureInput = { name: 'm', value: summary.total, kind: 'mass' };
  const x: FigureInput = { name: 'x_c', value: summary.center.x, kind: 'length' };
  const p: FigureInput = { name: 'p', value: wheelbase, kind: 'length' };
  const rear = derived('moments about the rear contact, g = 9.80665 m/s²');
  const steiner = derived('parallel axis theorem over the parts');
  const machine = summary.parts.filter((part) => part.body !== 'rider');
  return [
    figure('bare', 'm_b', 'mass without rider', summary.bare, 'mass', 'm_b = Σ m_i', parts(machine)),
    figure('total', 'm', 'mass with rider', summary.total, 'mass', 'm = m_b + rider', [
      { name: 'm_b', value: summary.bare, kind: 'mass' },
      { name: 'rider', value: build.rider.mass, kind: 'mass' },
    ]),
    figure(
      'center.x',
      'x_c',
      'center of mass ahead of the rear axle, with rider',
      summary.center.x,
      'length',
      'x_c = Σ m_i·x_i / m',
      [total],
      bodySources.segments,
    ),
    figure(
      'center.y',
      'y_c',
      'center of mass left of the center plane, with rider',
      summary.center.y,
      'length',
      'y_c = Σ m_i·y_i / m',
      [total],
    ),
    figure(
      'center.z',
      'z_c',
      'height of the center of mass, with rider',
      summary.center.z,
      'length',
      'z_c = Σ m_i·z_i / m',
      [total],
      bodySources.segments,
    ),
    figure(
      'bareCenter.x',
      'x_b',
      'center of mass ahead of the rear axle, without rider',
      summary.bareCenter.x,
      'length',
      'x_b = Σ m_i·x_i / m_b',
      parts(machine),
    ),
    figure(
      'bareCenter.z',
      'z_b',
      'height of the center of mass, without rider',
      summary.bareCenter.z,
      'length',
      'z_b = Σ m_i·z_i / m_b',
      parts(machine),
    ),
    figure(
      'inertia.roll',
      'I_xx',
      'moment of inertia in roll about the center of mass',
      ixx,
      'inertia',
      'I = Σ (I_i + m_i·(|d|²·E − d·dᵀ))',
      [total],
      steiner,
    ),
    figure(
      'inertia.pitch',
      'I_yy',
      'moment of inertia in pitch about the center of mass',
      iyy,
      'inertia',
      'I = Σ (I_i + m_i·(|d|²·E − d·dᵀ))',
      [total],
      steiner,
    ),
    figure(
      'inertia.yaw',
      'I_zz',
      'moment of inertia in yaw about the center of mass',
      izz,
      'inertia',
      'I = Σ (I_i + m_i·(|d|²·E − d·dᵀ))',
      [total],
      steiner,
    ),
    figure(
      'frontLoad',
      'N_f',
      'front wheel load at rest',
      summary.frontLoad,
      'force',
      'N_f = m·g·x_c/p',
      [total, x, p],
      rear,
    ),
    figure(
      'rearLoad',
      'N_r',
      'rear wheel load at rest',
      summary.rearLoad,
      'force',
      'N_r = m·g·(1 − x_c/p)',
      [total, x, p],
      rear,
    ),
  ];
}

function tireFigures(id: string, name: string, entry: TireEntry, tire: TireSize): Figure[] {
  const { formula, inputs } = radiusWorking(entry, tire);
  const { source } = tire;
  return [
    {
      id: `${id}.radius`,
      symbol: 'R',
      name: `rolling radius, ${name}`,
      value: tire.radius,
      kind: 'length',
      formula,
      inputs,
      source,
    },
    {
      id: `${id}.radiusDoubt`,
      symbol: '±R',
      name: `likely error of the rolling radius, ${name}`,
      value: tire.doubt,
      kind: 'length',
      formula: tire.by === 'marking' ? '5 % of R; measure a rollout' : 'reading of the tape',
      inputs: [{ name: 'R', value: tire.radius, kind: 'length' }],
      source,
    },
    {
      id: `${id}.width`,
      symbol: 'W',
      name: `width, ${name}`,
      value: tire.width,
      kind: 'length',
      formula: entry.width === undefined ? `section width of ${entry.size}` : 'measured',
      inputs: [],
      source,
    },
  ];
}

function radiusWorking(
  entry: TireEntry,
  tire: TireSize,
): { readonly formula: string; readonly inputs: readonly FigureInput[] } {
  if (tire.by === 'rollout') {
    return {
      formula: 'R = rollout/(2π)',
      inputs: [{ name: 'rollout', value: entry.rollout!, kind: 'length' }],
    };
  }
  if (tire.by === 'diameter') {
    return {
      formula: 'R = diameter/2',
      inputs: [{ name: 'diameter', value: entry.diameter!, kind: 'length' }],
    };
  }
  return {
    formula: `R = outside diameter of ${entry.size} by its rule, halved`,
    inputs: [{ name: 'outside diameter', value: 2 * tire.radius, kind: 'length' }],
  };
}

function neckFigures(build: Build, layout: Layout): Figure[] {
  const { forkLength, forkOffset, headAngle, wheelbase } = build.steering;
  const inputs: FigureInput[] = [
    { name: 'p', value: wheelbase, kind: 'length' },
    { name: 'R_f', value: layout.frontTire.radius, kind: 'length' },
    { name: 'head angle', value: headAngle, kind: 'angle' },
    { name: 'd', value: forkOffset, kind: 'length' },
    { name: 'fork length', value: forkLength, kind: 'length' },
  ];
  const source = derived('foot of the front axle on the steering axis, then up the axis');
  const bottom = layout.points.neckBottom!;
  return [
    {
      id: 'steering.neckBottom.x',
      symbol: 'x_n',
      name: 'bottom of the neck ahead of the rear axle',
      value: bottom.x,
      kind: 'length',
      formula: 'x_n = p − d·sin(head angle) − fork length·cos(head angle)',
      inputs,
      source,
    },
    {
      id: 'steering.neckBottom.z',
      symbol: 'z_n',
      name: 'height of the bottom of the neck',
      value: bottom.z,
      kind: 'length',
      formula: 'z_n = R_f − d·cos(head angle) + fork length·sin(head angle)',
      inputs,
      source,
    },
  ];
}
