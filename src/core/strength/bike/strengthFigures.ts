import { derived, type Figure, type FigureInput } from '../../quantity/index.ts';
import type { Check, UtilizationRow } from './checks/utilizationRow.ts';
import { driveFigures } from './driveFigures.ts';
import type { StrengthCore } from './strengthCore.ts';

/** Symbol and formula of each check. */
const FORMULAS: Readonly<Record<Check, readonly [symbol: string, formula: string]>> = {
  vonMises: ['σv', 'σv = max √(σ² + 3·τ²), σ = N/A + M·R/I, τ = T·R/J + k·V/A'],
  shaftStress: ['σv', 'σv = max √(σ² + 3·τ²), σ = N/A + M·R/I, τ = T·R/J + k·V/A'],
  axleBending: ['σ', 'σ = 32·M/(π·d³)'],
  axleFatigue: ['n', '1/n = 16/(π·d³)·(A/Se + B/Sut)'],
  keyseatFatigue: ['n', '1/n = 16/(π·d³)·(A/Se + B/Sut)'],
  keyShear: ['τ', 'τ = 2·T/(D·W·L)'],
  keyBearing: ['σ', 'σ = 4·T/(D·L·H)'],
  bearingTilt: ['θ', 'θ = √((dy/dx)² + (dz/dx)²)'],
  bearingLife: ['L10h', 'L10h = 10⁶·(C/Pm)³/(60·n)'],
  bearingStatic: ['s0', 's0 = C0/P0'],
  bearingSpeed: ['n', 'n against its limit'],
  criticalSpeed: ['n', 'n against its limit'],
  chainTension: ['F', 'F = T/r'],
  chainPower: ['n', 'n = min(HP1, HP2)/(P·f)'],
  chainShock: ['F', 'F = f·T/r + m·v²'],
  chainPressure: ['p', 'p = F·Σ(τ·n·t)/Σ(n·t)/(d·b)'],
  chainSpeed: [
    'n',
    'n = 1000·[82.5/(7.95^p·1.0278^N·1.323^(F/1000))]^(1/(1.59·lg p + 1.873)), p in, F lbf, n rpm',
  ],
  beltWrap: ['θ', 'θ = π − 2·asin((D − d)/(2·C))'],
  beltSlip: ['S', 'S = (F1 − F2)·cos(β/2)/(2·µ)'],
  beltTension: ['F1', 'F1 = (F1 − F2)·e^(µ·θ/sin(β/2))/(e^(µ·θ/sin(β/2)) − 1) + m·v²'],
  seatStress: ['σv', 'σv = √(σθ² + σθ·p + p²), σθ = p·(Do² + d²)/(Do² − d²)'],
  seatClearance: ['Δ', 'Δ = 2·p·D²·d/(E·(D² − d²)), d = (4·D + bore)/5'],
  axleThread: ['n', '1/n = 16·Kf/(π·d3³)·(2·Ma/Se + 2·Mm/Sut) + F/(A3·Sut)'],
  wheelBearingLife: ['L10h', 'L10h = 10⁶·(C/Pm)³/(60·n)'],
  wheelBearingStatic: ['s0', 's0 = C0/max(Fr, 0.6·Fr + 0.5·Fa)'],
  boltSlip: ['Fi', 'Fi = F/(ks·µ) + P, F = |ΣF/n + M·r/Σr²|'],
  threadShear: ['τ', 'τ = F/At'],
  holeBearing: ['σ', 'σ = F/(d·t)'],
  holeTearOut: ['τ', 'τ = F/(2·t·(e − d0/2))'],
  boltLift: ['P', 'P = (F/n + M·l/Σl²)·(1 + a/e) + T/(n·l)'],
  plateStress: ['σv', 'σv = max √(σ² + 3·τ²), σ = N/A + M·c/I + 6·Mu/(b·t²)'],
  wallUnderTube: ['U', 'U = N/NRd + (Mip/Mip,Rd)² + |Mop|/Mop,Rd'],
  wallUnderPlate: [
    'U',
    'U = max(N/NRd + (M/MRd)², q/(2·t0·fy0/√3)), q = N/l + 6·M/l² or, hollowed, √((V/s − M·(r·cos φ − c)/J)² + (N/s + M·r·sin φ/J)²)',
  ],
  slotBearing: ['σ', 'σ = F/(d·t)'],
  slotTearOut: ['τ', 'τ = F/(2·t·(e − d0/2))'],
  tubeWeld: ['τ', 'τ = √(σ⊥² + τ²) in the throat'],
  footWeld: ['τ', 'τ = √(σ⊥² + τ²) in the throat'],
  buckling: ['N', 'Ncr = π²·E·I/L², limit Ncr/3'],
};

/** Figures of every comparison, of drive limits, weld lives, stiffness and drives. */
export function strengthFigures(core: StrengthCore): readonly Figure[] {
  return [
    ...core.rows.map(rowFigure),
    ...limitFigures(core),
    ...weldFigures(core),
    ...stiffnessFigures(core),
    ...driveFigures(core),
  ].filter(({ value }) => Number.isFinite(value));
}

function rowFigure(row: UtilizationRow): Figure {
  const [symbol, formula] = FORMULAS[row.check];
  const place = row.place === undefined ? '' : `.${row.place}`;
  return {
    id: `strength.${row.part}.${row.check}${place}`,
    symbol,
    name: `${row.quantity}, ${row.part} ${row.where}, case ${row.case}`,
    value: row.value,
    kind: row.kind,
    formula,
    inputs: [
      { name: 'limit', value: row.limit, kind: row.kind },
      { name: 'utilization', value: row.utilization, kind: 'ratio' },
    ],
    source: row.source,
  };
}

function limitFigures({ limits }: StrengthCore): Figure[] {
  if (!(limits.engineForce > 0)) return [];
  const inputs: FigureInput[] = [
    { name: 'from the engine', value: limits.engineForce, kind: 'force' },
    { name: 'grip', value: limits.gripForce, kind: 'force' },
    { name: 'front wheel lifts', value: limits.liftForce, kind: 'force' },
  ];
  return [
    {
      id: 'strength.driveForce',
      symbol: 'F',
      name: 'force at the rear wheel at the limit',
      value: limits.driveForce,
      kind: 'force',
      formula: 'F = min(T·i/R, µ·m·g·(p − b)/(p − µ·h), m·g·b/h)',
      inputs,
      source: derived('statics of the accelerating bike'),
    },
  ];
}

function weldFigures({ welds }: StrengthCore): Figure[] {
  const worst = new Map<string, (typeof welds)[number]>();
  for (const weld of welds) if (!worst.has(weld.part)) worst.set(weld.part, weld);
  return [...worst.values()].map((weld): Figure => {
    const kilometers = (name: string, value: number): FigureInput[] =>
      Number.isFinite(value) ? [{ name, value, kind: 'ratio' }] : [];
    return {
      id: `strength.${weld.part}.weldDamage`,
      symbol: 'D',
      name: `damage of a kilometer, ${weld.part} ${weld.where}`,
      value: weld.estimate.damage,
      kind: 'ratio',
      formula: 'D = Σ n/N, N = 2·10⁶·(ΔσC/Δσ)^m',
      inputs: [
        { name: 'ΔσC', value: weld.category, kind: 'pressure' },
        { name: 'largest Δσ', value: weld.range, kind: 'pressure' },
        ...kilometers('km, one class lower with its factor', weld.life.low),
        ...kilometers('km, class as given', weld.life.middle),
        ...kilometers('km, one class higher', weld.life.high),
      ],
      source: weld.source,
    };
  });
}

function stiffnessFigures({ stiffness }: StrengthCore): Figure[] {
  if (!stiffness) return [];
  const figure = (id: string, name: string, value: number): Figure => ({
    id: `strength.stiffness.${id}`,
    symbol: 'M',
    name,
    value,
    kind: 'torque',
    formula: 'M = (π/180)·M1/θ1',
    inputs: [{ name: 'M1', value: 100, kind: 'torque' }],
    source: derived('equal and opposite torques on the frame'),
  });
  return [
    figure('neckTwist', 'torque for one degree of twist, neck against rear axle', stiffness.neckTwist),
    figure('rearYaw', 'torque for one degree of yaw, rear axle against engine', stiffness.rearYaw),
  ];
}
