import { describe, expect, it } from 'vitest';
import { areaText, handText, severalThings } from '../../src/words/sketch';
import { accuracyText, meterNote } from '../../src/words/survey';

describe('words of the sketch', () => {
  it('an area follows the unit of lengths', () => {
    expect([areaText(12.6, 'm'), areaText(12.6, 'ft')]).toEqual(['12.6 m²', '136 ft²']);
  });

  it('what is in hand is named, and how it is used', () => {
    expect(handText('radiator', 'radiator').what).toBe('In hand: radiator.');
    expect(handText('roomCorners', 'room by corners').how).toContain(
      'type a length, Enter. Press the first corner',
    );
    expect(handText('piece', 'Double bed').what).toBe('In hand: double bed.');
  });

  it('several things are named one by one, many are counted', () => {
    const piece = (name: string) => ({ name, collection: 'pieces' });
    expect(severalThings([piece('Bed'), piece('Desk')])).toEqual({ count: '2 things:', names: 'Bed, Desk.' });
    const many = [...Array.from({ length: 6 }, () => piece('Bed')), { name: 'Hall', collection: 'rooms' }];
    expect(severalThings(many).names).toBe('6 pieces, 1 room.');
  });

  it('±25 % never breaks: no line may end behind its thin space', () => {
    for (const text of [accuracyText(25), meterNote(10, '0.01 µT', 'limits')])
      expect(text).not.toMatch(/\u2009(?!\u2060)/);
  });
});
