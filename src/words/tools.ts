/** What a tool wants of the hand, in one line; the second sentence is for those with a keyboard. */
export const toolHints: Record<string, { hand: string; keys: string }> = {
  select: {
    hand: 'Press a thing to pick it; drag it to move it.',
    keys: 'Shift adds to what is picked. Alt lets go of walls and grid.',
  },
  pan: { hand: 'Drag to move the sheet.', keys: 'The space bar does the same with any tool.' },
  roomDrag: { hand: 'Drag from corner to corner of the room.', keys: 'Alt lets go of walls and grid.' },
  roomCorners: {
    hand: 'Press each corner in turn; the first one closes the room.',
    keys: 'Type a length and press Enter to fix it. Backspace takes back a corner.',
  },
  opening: { hand: 'Press the wall where it sits.', keys: 'Alt sets it exactly at the pointer.' },
  fixture: { hand: 'Drag from corner to corner.', keys: 'Alt lets go of walls and grid.' },
  piece: { hand: 'Press where it stands; near a wall its head goes to the wall.', keys: 'R turns it.' },
  sourcePoint: { hand: 'Press where it is.', keys: 'Escape puts the sign down.' },
  sourceLine: {
    hand: 'Press along the line; press the last place twice to end it.',
    keys: 'Enter ends it too. Backspace takes back a corner.',
  },
  reading: {
    hand: 'Press where you stand, then type what the meter shows.',
    keys: 'Arrow keys carry the place; with Shift by a metre.',
  },
  walk: { hand: 'Press where the walk begins, then where it ends.', keys: 'Escape starts it anew.' },
  scale: {
    hand: 'Press two places in the picture whose distance you know.',
    keys: 'Then type the distance and press Enter.',
  },
};
