/**
 * A whole launch against a general numeric library: force from the torque table is written anew in Python, with no
 * segments and no events but the speeds to time, and integrated by a method of another family in pieces between kinks.
 */
import { expect, test } from 'vitest';
import { solveOde } from '../../src/core/numerics/index.ts';
import { type Outcome, rpm } from '../../src/core/quantity/index.ts';
import { clutchOf, engineCurve, type LaunchInput, simulateLaunch } from '../../src/core/ride/index.ts';
import { runPython } from '../support/debianPython.ts';

const SCIPY = { module: 'scipy', debianPackage: 'python3-scipy' };

const must = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
};

const bike = {
  mass: 141,
  R: 0.165,
  G: 6.5,
  eta: 0.88,
  cda: 0.6,
  rho: 1.19,
  crr: 0.024,
  grade: 0.03,
  inertia: 0.19,
  crank: 0.0035,
  rpms: [1500, 1900, 2500, 3100, 3600],
  torques: [9.8, 11.2, 12.1, 11.6, 10.3],
  bite: 2000,
  lock: 2600,
  capacity: 12.4,
  wheelbase: 1.06,
  b: 0.31,
  h: 0.72,
  speeds: [2, 4, 6, 8, 9.5],
};

const LAUNCH = `
import json
import numpy as np
from scipy.integrate import quad
from scipy.optimize import brentq
d = json.load(sys.stdin)
g = 9.80665
w = np.array(d['rpms']) * 2 * np.pi / 60
T = lambda o: float(np.interp(o, w, d['torques']))
w0, w1 = d['bite'] * 2 * np.pi / 60, d['lock'] * 2 * np.pi / 60
K = d['capacity'] / (w1**2 - w0**2)
ws = brentq(lambda o: T(o) - K * (o * o - w0 * w0), w0, w[-1], xtol=1e-14, rtol=1e-14)
al = np.arctan(d['grade'])
res = lambda v: d['mass'] * g * (np.sin(al) + d['crr'] * np.cos(al)) + 0.5 * d['rho'] * d['cda'] * v * v
M = d['mass'] + d['inertia'] / d['R']**2
vlock = ws * d['R'] / d['G']
def acc(v):
    slip = v < vlock
    o = ws if slip else v * d['G'] / d['R']
    F = T(o) * d['G'] * d['eta'] / d['R']
    m = M if slip else M + d['eta'] * d['crank'] * (d['G'] / d['R'])**2
    full = (F - res(v)) / m
    lift = g * (d['b'] * np.cos(al) / d['h'] - np.sin(al)) - 0.5 * d['rho'] * d['cda'] * v * v / d['mass']
    return min(full, lift)
kinks = sorted([vlock] + [o * d['R'] / d['G'] for o in w])
out = []
for v in d['speeds']:
    cuts = [0.0] + [k for k in kinks if 0 < k < v] + [v]
    t = sum(quad(lambda u: 1 / acc(u), a, b, epsabs=1e-13, epsrel=1e-13)[0] for a, b in zip(cuts, cuts[1:]))
    x = sum(quad(lambda u: u / acc(u), a, b, epsabs=1e-13, epsrel=1e-13)[0] for a, b in zip(cuts, cuts[1:]))
    out.append([t, x])
json.dump({'marks': out, 'vlock': vlock, 'start': acc(0.0), 'capped': bool(acc(0.0) < (T(ws) * d['G'] * d['eta'] / d['R'] - res(0)) / M)}, sys.stdout)
`;

function inputOf(): LaunchInput {
  const points = bike.rpms.map((at, k) => ({ speed: rpm(at), torque: bike.torques[k]! }));
  return {
    road: {
      mass: bike.mass,
      dragArea: bike.cda,
      airDensity: bike.rho,
      rollingCoefficient: bike.crr,
      grade: bike.grade,
    },
    drive: {
      ratio: bike.G,
      efficiency: bike.eta,
      wheelRadius: bike.R,
      clutch: must(clutchOf({ engages: rpm(bike.bite), locks: rpm(bike.lock), capacity: bike.capacity })),
    },
    engine: must(engineCurve({ points, inertia: bike.crank })),
    rotatingInertia: bike.inertia,
    stance: { wheelbase: bike.wheelbase, centerForward: bike.b, centerHeight: bike.h },
    speeds: bike.speeds,
    tolerance: 1e-12,
  };
}

test.each([
  ['full throttle', {}],
  ['wheel lift rules at first', { b: 0.06, h: 0.72, G: 9 }],
])('times, distances and lock-up of a launch with torque table, slip and hill: %s', (_name, change) => {
  Object.assign(bike, change);
  bike.speeds = bike.speeds.filter((speed) => speed < (rpm(3600) * bike.R) / bike.G);
  const launch = must(simulateLaunch(inputOf()));
  const found = runPython(LAUNCH, bike, SCIPY) as {
    marks: [number, number][];
    vlock: number;
    start: number;
    capped: boolean;
  };
  expect(launch.trace[0]!.acceleration).toBeCloseTo(found.start, 10);
  expect(launch.switches[0]!.throttle).toBe(found.capped ? 'wheel-lift' : 'full');
  expect(launch.lockUp!.speed).toBeCloseTo(found.vlock, 9);
  expect(launch.times.length).toBe(bike.speeds.length);
  launch.times.forEach((mark, k) => {
    // Quadrature at 1e-13 against steps at 1e-12: a few digits are lost on each side.
    expect(Math.abs(mark.time - found.marks[k]![0])).toBeLessThan(1e-8);
    expect(Math.abs(mark.distance - found.marks[k]![1])).toBeLessThan(1e-8);
  });
});

const PENDULUM = `
import json
import numpy as np
from scipy.integrate import solve_ivp
d = json.load(sys.stdin)
f = lambda t, y: [y[1], -np.sin(y[0]) - 0.1 * y[1] + 0.5 * np.cos(0.7 * t)]
e = lambda t, y: y[0]
s = solve_ivp(f, [0, 25], [1.0, 0.0], method='DOP853', rtol=1e-13, atol=1e-13, events=e, dense_output=True)
json.dump({'end': s.y[:, -1].tolist(), 'zeros': s.t_events[0].tolist(), 'at': s.sol(d).T.tolist()}, sys.stdout)
`;

test('a driven, damped pendulum: end, zeros and states between the steps', () => {
  const times = [0.5, 3.3, 12.1, 24.9];
  const found = runPython(PENDULUM, times, SCIPY) as { end: number[]; zeros: number[]; at: number[][] };
  const solved = solveOde(
    {
      rates: (t, y, rate) => {
        rate[0] = y[1]!;
        rate[1] = -Math.sin(y[0]!) - 0.1 * y[1]! + 0.5 * Math.cos(0.7 * t);
      },
      start: [1, 0],
      from: 0,
      to: 25,
      events: [{ value: (_t, y) => y[0]! }],
    },
    { relative: 1e-12, absolute: 1e-12, keepPath: true },
  );
  solved.state.forEach((value, k) => {
    expect(Math.abs(value - found.end[k]!)).toBeLessThan(1e-10);
  });
  expect(solved.crossings.length).toBe(found.zeros.length);
  solved.crossings.forEach((one, k) => {
    // The library finds zeros on its own dense output, of order 7.
    expect(Math.abs(one.time - found.zeros[k]!)).toBeLessThan(1e-9);
  });
  times.forEach((time, k) => {
    // Our continuous extension is of order 4.
    expect(Math.abs(solved.path!(time)[0]! - found.at[k]![0]!)).toBeLessThan(1e-7);
  });
});
