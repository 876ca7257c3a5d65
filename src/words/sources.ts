import type { Evidence } from '../engine/mapping/fitSurvey';
import type { SourceShare } from '../engine/mapping/sourceKriging/sourceShares';
import type { Home } from '../home/home';
import { roomAt } from '../home/questions/roomAt';
import { percentText } from './numbers';
import { roomName, thingName } from './things';

export const sourceWords = {
  title: 'Marked sources',
  share: 'share at the readings',
  how: 'Shares are of B² (contributions add as squares), averaged over the places that were read; the rest is background.',
  none: 'No source is marked, so source kriging is kriging.',
};

/** '40–70 %', of what the sources and the background give together. */
export function shareText([low, high]: SourceShare['share']): string {
  const [from, to] = [low, high].map((share) => Math.round(share * 100));
  return from === to ? percentText(high) : `${from}–${percentText(to! / 100)}`;
}

/** 'Of B² at the readings 40–60 % comes from outside …'; '' where the method does not tell. */
export const originsSentence = ({ origins }: Pick<Evidence, 'origins'>): string =>
  origins
    ? `Of B² at the readings ${shareText(origins.outside)} comes from outside and ${shareText(origins.house)} is the house’s own, as far as the samples tell; a round with the supply off tells it by reading.`
    : '';

const POWERS = { 1: '1/r', 2: '1/r²', 3: '1/r³' } as const;

/** 'falls as 1/r², by the readings'; '' where no power of distance describes it. */
export const falloffText = ({ falloff, fitted }: Pick<SourceShare, 'falloff' | 'fitted'>): string =>
  falloff === null ? '' : `falls as ${POWERS[falloff]}${fitted ? ', by the readings' : ', as given'}`;

/** 'Street line: falls as 1/r², by the readings; 40–70 % of B² at the readings.' */
export function shareSentence(home: Home, share: SourceShare): string {
  const parts = [falloffText(share), `${shareText(share.share)} of B² at the readings`].filter(Boolean);
  return `${nameOf(home, share)}: ${parts.join('; ')}.`;
}

export const nameOf = (home: Home, { id }: Pick<SourceShare, 'id'>): string =>
  thingName(home, { kind: 'source', id });

/** A mark that the readings contradict, and what to look at; nothing where none is. */
export function silentSentences(home: Home, sources: readonly SourceShare[]): string[] {
  return sources.flatMap((share) => {
    const source = home.sources[share.id];
    if (!share.silent || !source) return [];
    const room = roomAt(home, source.level, source.path[0]!);
    const where = source.kind === 'point' && room ? `, marked in: ${roomName(home, room.id)},` : '';
    const ask =
      source.kind === 'point'
        ? 'Was it on, and is it marked where it stands?'
        : 'Does it run where it is marked, and did it carry a current?';
    return [`${nameOf(home, share)}${where} explains nothing of these readings. ${ask}`];
  });
}
