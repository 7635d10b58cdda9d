/**
 * Natural frequencies of the demo frames against a second program of our own making in another language: it reads
 * nodes, members, links, lumps and supports, cuts the members itself, puts stiffness and mass together by textbook
 * matrices and hands them to LAPACK. Nothing of the core but its model goes in.
 */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readBuild, solve } from '../../src/core/index.ts';
import { slowStrength, strengthOf } from '../../src/core/strength/index.ts';
import { runPython } from '../support/debianPython.ts';

/** Stiffness with shear by Φ = 12·E·I/(G·As·L²); mass of a slender beam (Przemieniecki 1968, chapters 5 and 11). */
const SCRIPT = `
import json, sys
import numpy as np
model = json.load(sys.stdin)
STEP = 0.06
WAYS = ['ux', 'uy', 'uz', 'rx', 'ry', 'rz']
at = {k: np.array([v['x'], v['y'], v['z']]) for k, v in model['nodes'].items()}
parts = []
for m in model['members']:
    a, b = at[m['from']], at[m['to']]
    n = max(1, int(np.ceil(np.linalg.norm(b - a) / STEP)))
    names = [m['from']] + ['%s:%d' % (m['id'], k) for k in range(1, n)] + [m['to']]
    for k in range(1, n):
        at[names[k]] = a + (b - a) * k / n
    free = m.get('releases', {})
    for k in range(n):
        parts.append((m, names[k], names[k + 1],
            free.get('from', []) if k == 0 else [], free.get('to', []) if k == n - 1 else []))
leader = {l['follower']: l['leader'] for l in model.get('links', [])}
assert not any(l in leader for l in leader.values())
held = {(s['node'], w) for s in model['supports'] for w in s['fixed']}
assert not any(s.get('springs') for s in model['supports'])
number = {}
for name in at:
    if name not in leader:
        for w in WAYS:
            if (name, w) not in held:
                number[(name, w)] = len(number)
N = len(number)
def rows(name):
    """Movements of a node as rows over those of its leader."""
    head = leader.get(name, name)
    r = at[name] - at[head]
    T = np.eye(6)
    T[0:3, 3:6] = [[0, r[2], -r[1]], [-r[2], 0, r[0]], [r[1], -r[0], 0]]
    return head, T
def bend(EI, L, phi):
    c = EI / (L ** 3 * (1 + phi))
    return c * np.array([[12, 6*L, -12, 6*L], [6*L, (4+phi)*L*L, -6*L, (2-phi)*L*L],
        [-12, -6*L, 12, -6*L], [6*L, (2-phi)*L*L, -6*L, (4+phi)*L*L]])
def bending_mass(m, L):
    return m * L / 420 * np.array([[156, 22*L, 54, -13*L], [22*L, 4*L*L, 13*L, -3*L*L],
        [54, 13*L, 156, -22*L], [-13*L, -3*L*L, -22*L, 4*L*L]])
def local(m, L):
    E, G, A, J = m['youngsModulus'], m['shearModulus'], m['area'], m['torsionConstant']
    rho = m.get('density', 0)
    K, M = np.zeros((12, 12)), np.zeros((12, 12))
    bar = np.array([[1, -1], [-1, 1]]); barm = np.array([[2, 1], [1, 2]]) / 6
    K[np.ix_([0, 6], [0, 6])] += E * A / L * bar; M[np.ix_([0, 6], [0, 6])] += rho * A * L * barm
    K[np.ix_([3, 9], [3, 9])] += G * J / L * bar
    M[np.ix_([3, 9], [3, 9])] += rho * (m['secondMomentY'] + m['secondMomentZ']) * L * barm
    areas = m.get('shearAreas')
    # In the x-y plane rotation about z is the slope; in the x-z plane rotation about y is its negative.
    for ways, I, k, sign in (([1, 5, 7, 11], m['secondMomentZ'], 0, 1), ([2, 4, 8, 10], m['secondMomentY'], 1, -1)):
        phi = 12 * E * I / (G * areas[k] * L * L) if areas else 0
        S = np.diag([1, sign, 1, sign])
        K[np.ix_(ways, ways)] += S @ bend(E * I, L, phi) @ S
        M[np.ix_(ways, ways)] += S @ bending_mass(rho * A, L) @ S
    return K, M
K, M = np.zeros((N, N)), np.zeros((N, N))
def put(B, names, into):
    heads = [rows(n) for n in names]
    T = np.zeros((6 * len(names), 6 * len(names)))
    for i, (_, t) in enumerate(heads):
        T[6*i:6*i+6, 6*i:6*i+6] = t
    B = T.T @ B @ T
    index = [number.get((h, w), -1) for h, _ in heads for w in WAYS]
    keep = [i for i, j in enumerate(index) if j >= 0]
    for i in keep:
        for j in keep:
            into[index[i], index[j]] += B[i, j]
for m, a, b, loose_a, loose_b in parts:
    x = at[b] - at[a]; L = np.linalg.norm(x); x = x / L
    up = np.array([m['up'][k] for k in 'xyz']) if 'up' in m else np.array([0, 0, 1.0])
    if np.linalg.norm(np.cross(up, x)) < 1e-6:
        up = np.array([1.0, 0, 0])
    y = up - x * (up @ x); y = y / np.linalg.norm(y)
    R = np.kron(np.eye(4), np.array([x, y, np.cross(x, y)]))
    k, q = local(m, L)
    loose = [WAYS.index(w) for w in loose_a] + [6 + WAYS.index(w) for w in loose_b]
    if loose:
        kept = [i for i in range(12) if i not in loose]
        C = np.eye(12)
        C[np.ix_(loose, kept)] = -np.linalg.solve(k[np.ix_(loose, loose)], k[np.ix_(loose, kept)])
        C[np.ix_(loose, loose)] = 0
        k, q = C.T @ k @ C, C.T @ q @ C
    put(R.T @ k @ R, [a, b], K); put(R.T @ q @ R, [a, b], M)
for lump in model.get('masses', []):
    B = np.diag([lump['mass']] * 3 + [0.0] * 3)
    if 'inertia' in lump:
        xx, yy, zz, xy, yz, xz = lump['inertia']
        B[3:, 3:] = [[xx, xy, xz], [xy, yy, yz], [xz, yz, zz]]
    put(B, [lump['node']], M)
C = np.linalg.cholesky(K)
half = np.linalg.solve(C, M)
A = np.linalg.solve(C, half.T)
largest = np.linalg.eigvalsh((A + A.T) / 2)[::-1][:10]
print(json.dumps({'size': N, 'hertz': (1 / np.sqrt(largest) / (2 * np.pi)).tolist()}))
`;

test.each(['light', 'heavy'])('%s demo: ten frequencies within 0.05 percent', (name) => {
  const read = readBuild(readFileSync(`demo/${name}.build.json`, 'utf8'));
  if (!read.ok) throw new Error('the demo does not read');
  const strength = strengthOf(solve(read.value));
  const theirs = runPython(SCRIPT, strength.frame.model, {
    module: 'numpy',
    debianPackage: 'python3-numpy',
  }) as { readonly size: number; readonly hertz: readonly number[] };
  expect(theirs.size).toBeGreaterThan(700);
  const ours = slowStrength(strength, read.value).frequencies.map(
    ({ angularFrequency }) => angularFrequency / (2 * Math.PI),
  );
  expect(ours).toHaveLength(10);
  ours.forEach((hertz, i) => {
    // They leave out rotary inertia of the tubes and its part in shear, and cut to other lengths: up to 2e-4.
    expect(Math.abs(hertz / theirs.hertz[i]! - 1)).toBeLessThan(5e-4);
  });
});
