import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { cardPages } from '../../language/src/drawing/card/pages.ts';
import { exampleOf } from './card-plans.ts';

test('the card in the README is the first page of what the example prints today', async () => {
    const { card, scene } = await exampleOf('bank-settled');
    await expect(cardPages(card, scene)[0]).toMatchFileSnapshot(
        resolve(import.meta.dirname, '../../examples/settled-day-card.svg'),
    );
});
