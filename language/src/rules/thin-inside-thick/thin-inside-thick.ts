import { swap } from '../fixes.ts';
import { neighboursOutward } from '../neighbours.ts';
import { rule } from '../rule.ts';
import { sayApart } from '../say.ts';
import { length } from '../settings.ts';
import { practice } from '../standing.ts';

/** A thin line close in, beneath a thick one from a rigger. */
export const thinInsideThick = rule({
    name: 'thin-inside-thick',
    group: 'tackle',
    standing: practice('A thin close line chafes on a thick rigger line when the two cross.'),
    severity: 'warning',
    summary: 'A thin line runs close in, inside a thick rigger line.',
    settings: { slack: length('0.05 mm', ['0 mm', '1 mm'], 'Lines this close in diameter count as equal.') },

    check(analysis, { slack }, report) {
        for (const [{ line: near }, { line: far }] of neighboursOutward(analysis)) {
            if (far.position.place !== 'rigger' || near.position.place === 'rigger') continue;
            const [thin, thick] = [near, far].map(({ outfit }) => outfit?.value.line?.diameter);
            if (!thin || !thick || thin.si >= thick.si - slack) continue;
            const [thinner, thicker] = sayApart.length(thin, thick);
            report({
                at: near.outfit!,
                what: `${near.position.name} fishes ${thinner} line inside the ${thicker} line of ${far.position.name}.`,
                why: 'When the two cross, the thin one is cut.',
                remedy: 'Put the lighter outfit further back.',
                related: [{ at: far.outfit, what: `The thicker line is on ${far.outfit?.value.title}.` }],
                fixes: [swap('Swap the two outfits', near.outfit!, far.outfit!)],
                positions: [near, far],
            });
        }
    },
});
