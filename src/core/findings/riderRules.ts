import type { Bike, MassSummary } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import { practice } from '../quantity/index.ts';
import type { Finding } from './finding.ts';
import { say, sayLength, sayList } from './words.ts';

/** Standing clearance between seat and inseam. */
const STANDING_ROOM = 0.0762;
/** Weight off the center plane beyond this pulls to one side [m]. */
const LATERAL = 0.01;
/** Share of the weight on the front wheel. */
const FRONT_SHARE = { min: 0.3, max: 0.6 };
const PEG_HEIGHT = 0.1;

export function riderFindings(build: Build, bike: Bike, masses: MassSummary): readonly Finding[] {
  return [
    ...reachFindings(bike),
    ...standingFindings(build, bike),
    ...pegFindings(bike),
    ...massFindings(masses),
  ];
}

function reachFindings(bike: Bike): Finding[] {
  if (bike.rider.outOfReach.length === 0) return [];
  return [
    {
      id: 'rider.reach',
      severity: 'caution',
      question: 'ride',
      part: 'seating',
      path: 'seating',
      what: `The rider cannot reach: ${sayList(bike.rider.outOfReach)} at full stretch.`,
      why: 'A limb at full stretch has no control of bar or peg.',
      remedy: 'Move seat, pegs or grips nearer to each other.',
      source: { key: 'ansur-2', where: 'link lengths, scaled by stature' },
    },
  ];
}

/** Over the seat with both feet down; the seat's width takes some of the inseam, which is not counted. */
function standingFindings(build: Build, bike: Bike): Finding[] {
  const { inseam } = build.rider;
  if (inseam === undefined) return [];
  const room = inseam - bike.layout.places.seat.z;
  if (room >= STANDING_ROOM) return [];
  return [
    {
      id: 'rider.standing',
      severity: 'caution',
      question: 'ride',
      part: 'seat',
      path: 'seating.seat.place',
      what:
        room < 0
          ? `The seat is ${sayLength(-room)} above the rider's inseam.`
          : `Only ${sayLength(room)} between seat and inseam, standing.`,
      value: room,
      limit: STANDING_ROOM,
      margin: room - STANDING_ROOM,
      kind: 'length',
      why: 'Both feet should reach the ground at a stop.',
      remedy: 'A lower seat.',
      source: practice('3 in or more between seat and inseam'),
    },
  ];
}

function pegFindings(bike: Bike): Finding[] {
  const height = bike.layout.places.peg.z;
  if (height >= PEG_HEIGHT) return [];
  return [
    {
      id: 'rider.peg-height',
      severity: 'caution',
      question: 'ride',
      part: 'pegs',
      path: 'seating.pegs.place',
      what: `The pegs are ${sayLength(height)} above the ground.`,
      value: height,
      limit: PEG_HEIGHT,
      margin: height - PEG_HEIGHT,
      kind: 'length',
      why: 'They scrape in a slow turn; lean angles are not swept here.',
      remedy: 'Higher pegs.',
      source: practice('upright ground clearance 4 to 6 in'),
    },
  ];
}

function massFindings(masses: MassSummary): Finding[] {
  const findings: Finding[] = [];
  const off = masses.center.y;
  if (Math.abs(off) > LATERAL) {
    findings.push({
      id: 'mass.lateral',
      severity: 'caution',
      question: 'ride',
      part: 'masses',
      what: `With the rider the weight lies ${sayLength(Math.abs(off))} to the ${off > 0 ? 'left' : 'right'} of the center plane.`,
      value: Math.abs(off),
      limit: LATERAL,
      margin: LATERAL - Math.abs(off),
      kind: 'length',
      why: 'It pulls to that side and stands crooked.',
      remedy: 'Move the engine or tank across, or hang something on the other side.',
      source: practice('weight in the center plane'),
    });
  }
  const share = masses.frontLoad / (masses.frontLoad + masses.rearLoad);
  if (share < FRONT_SHARE.min || share > FRONT_SHARE.max) {
    const limit = share < FRONT_SHARE.min ? FRONT_SHARE.min : FRONT_SHARE.max;
    findings.push({
      id: 'mass.front-share',
      severity: 'caution',
      question: 'ride',
      part: 'masses',
      what: `${(share * 100).toFixed(0)} % of the weight is on the front wheel (${say(masses.frontLoad, 'force')} of ${say(masses.frontLoad + masses.rearLoad, 'force')}).`,
      value: share,
      limit,
      margin: -Math.abs(share - limit),
      kind: 'ratio',
      why:
        share < FRONT_SHARE.min
          ? 'A light front wheel lifts on the throttle and steers little.'
          : 'A light rear wheel lifts on the brake.',
      remedy: 'Move the rider or the engine along the bike, or change the wheelbase.',
      source: practice('30 to 60 % of the weight on the front wheel'),
    });
  }
  return findings;
}
