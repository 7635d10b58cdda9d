export { type Clearance, clearances } from './clearances.ts';
