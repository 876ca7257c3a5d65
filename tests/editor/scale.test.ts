import { describe, expect, it } from 'vitest';
import { change } from '../../src/home/edits/change';
import { bedroom } from '../support/homes';
import { drive } from '../support/driver';

const PICTURE = 'data:image/gif;base64,R0lGODlhAQABAIAAAP///wAAACwAAAAAAQABAAACAkQBADs=';

describe('the scale of a picture', () => {
  it.each([1e9, 201, 0.09, 0.00001])('fault: %d m between two points was taken', async (metres) => {
    const { editor, click } = await drive({ home: bedroom() });
    const backdrop = { image: PICTURE, at: [0, 0] as const, metresPerPixel: 0.01, angle: 0, opacity: 0.5 };
    editor.run(change({ collection: 'levels', id: 'l1' }, { backdrop }));
    editor.useTool('scale');
    click([1, 1]);
    click([3, 1]);
    expect(editor.scaleTo(metres)).toEqual({ kind: 'scale-out-of-reach', metres, least: 0.1, most: 200 });
    expect(editor.home.levels.l1!.backdrop).toEqual(backdrop);
    // The two points still wait for their distance.
    expect(editor.scaleTo(4)).toBeNull();
    expect(editor.home.levels.l1!.backdrop!.metresPerPixel).toBeCloseTo(0.02, 9);
  });
});

describe('Escape in the survey', () => {
  it('with nothing pending leaves the meter in hand', async () => {
    const { editor, click, key } = await drive({ home: bedroom() });
    editor.setStage('survey');
    for (let i = 0; i < 3; i++) key('Escape');
    click([2.2, 2.7]);
    expect([editor.tool, editor.readingPlace]).toEqual(['reading', [2.2, 2.7]]);
  });
});
