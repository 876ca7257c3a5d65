export { sameValue } from '../engine/sameValue';
