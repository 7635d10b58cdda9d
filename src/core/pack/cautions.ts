/** Said with every pack, in plain words. @source practice, usual cautions of the trade; local codes come first */
export const cautions: readonly string[] = [
  'This pack is an estimate, not an approval. It says what was checked and against which limit; what is not listed was not checked. Local codes, road law and licensed practice come before anything written here.',
  'Most places require approval, registration, license, insurance, lights and noise limits for any motor vehicle on a public way; private land needs its owner’s consent.',
  'Welding and cutting: eye, face and hand protection, screens for others; fresh air, no plated, painted or oily steel; nothing that burns near; fire watch after.',
  'Neck, fork, axle and brake mounts only by a proven welder; cut up and look at a practice joint first. Cracks grow: look inches beside each weld before each ride.',
  'Rotating parts: guards over chain, belt, clutch and sprockets before the first start; no loose clothing; nobody in line with belt, chain or wheel.',
  'Brakes first: two independent brakes fitted and tried before the engine is started. Throttle that snaps shut at both locks, a kill switch that is tried, a tether for novices.',
  'Fuel: vented tank away from heat, shut-off, no line over the exhaust, refuel cold and outdoors, extinguisher at hand. Run engines in the open.',
  'Never beyond the engine maker’s governed speed. Utility tires, rims and clutches have their own speed limits: read them.',
  'Helmet, gloves, boots, long clothing, eye protection. First rides off the road, at walking pace, with a second person.',
];

/** What was looked at besides whether it goes together and can be made. */
export interface Scope {
  readonly riding?: unknown;
  readonly strength?: unknown;
}

/** What was not looked at, or lies outside the models that were used; printed beside the findings. */
export function notChecked({ riding, strength }: Scope): readonly string[] {
  return [
    strength
      ? 'strength beyond the load cases listed: crashes, jumps, abuse, corrosion'
      : 'strength of frame, shafts, joints and welds',
    riding
      ? 'riding beyond the models: tire slip and wobble, flex, wind, passengers, what the ground does'
      : 'riding: launch, top speed, stopping distance, handling, lean angle',
    'quality of any part, weld or bearing in hand',
    'anything that was not entered in the build file',
  ];
}
