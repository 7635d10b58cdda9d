export { type Chain, chains, findChain } from './chain.ts';
export {
  readTire,
  type TireDimensions,
  type TireMarking,
  type TireReadings,
  type TireRule,
  tireDimensions,
} from './tire.ts';
