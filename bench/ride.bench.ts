import { layOut, placeBike, weigh } from '../src/core/bike/index.ts';
import { solveDriveline } from '../src/core/driveline/index.ts';
import { gearingTable, type LaunchInput, rideOf, simulateLaunch } from '../src/core/ride/index.ts';
import { findChain } from '../src/core/standards/index.ts';
import { bench, checksumOf, demoBuild } from './bench.ts';

function launchInput(name: 'light' | 'heavy'): LaunchInput {
  const build = demoBuild(name);
  const layout = layOut(build);
  const driveline = solveDriveline(build, layout);
  const bike = placeBike(build, layout, driveline.shafts);
  const ride = rideOf(build, bike, driveline, weigh(build, bike, []));
  if (!ride.ok) throw new Error(JSON.stringify(ride.issues));
  const speeds = Array.from({ length: 12 }, (_, k) => (k + 1) * 1.25);
  return { ...ride.value.launch, speeds };
}

const light = launchInput('light');
const heavy = launchInput('heavy');
const chain = findChain('#35');
if (!chain.ok) throw new Error('no #35 chain');
const teeth = (from: number, count: number) => Array.from({ length: count }, (_, k) => from + k);

const launchBench = (name: string, input: LaunchInput) =>
  bench({
    name: `one launch to top speed, ${name}`,
    warmUps: 200,
    runs: 200,
    target: 2,
    run: () => simulateLaunch(input),
    checksum: (launch) => checksumOf(launch.ok ? [launch.value.top, launch.value.times] : launch.issues),
  });

export const benches = [
  launchBench('light demo, clutch or belt as built', light),
  launchBench('heavy demo, clutch or belt as built', heavy),
  bench({
    name: 'gearing table of 400 sprocket pairs',
    warmUps: 5,
    runs: 20,
    target: 250,
    run: () =>
      gearingTable({
        launch: { ...light, drive: { ...light.drive, ratio: 1 } },
        driverTeeth: teeth(9, 8),
        drivenTeeth: teeth(40, 50),
        chain: chain.value,
        place: { height: light.drive.wheelRadius, offset: 0.095, halfTire: 0.045 },
        centers: { shortest: 0.36, longest: 0.4, now: 0.38 },
      }),
    checksum: (table) => checksumOf(table.ok ? table.value : table.issues),
  }),
];
