import { arrangeTimings, goodAreaTiming, pairTiming, relaxTiming } from './arrangePeer';

/** How long arranging takes, as JSON: to be run as built (see `asBuilt`). */
const homes = Number(process.argv[2]);
console.log(
  JSON.stringify({
    pairs: pairTiming(Math.min(60, homes)),
    timings: arrangeTimings(homes),
    relax: relaxTiming(Math.min(30, homes)),
    area: goodAreaTiming(Math.min(30, homes)),
  }),
);
