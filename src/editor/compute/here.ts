/**
 * What of the engine answers on the page itself, in a chunk of its own: nothing is asked of it before a worker has drawn
 * something, so that the first load goes without.
 */
export { brokenRules } from '../../engine/arranging/brokenRules';
export { fieldsOf } from '../../engine/dose/fieldAt';
export { ruleBook } from '../../engine/arranging/ruleBook';
