import fc from 'fast-check';
import { expect, test } from 'vitest';
import { SHOCK, weakestLink } from '../../language/src/physics/weakest-link.ts';

const kg = 9.80665;
const tackle = [
    { name: 'line', rated: 22.6 * kg },
    { name: 'bimini', rated: 22.6 * kg, fraction: 0.97 },
    { name: 'double', rated: 45.2 * kg },
    { name: 'swivel', rated: 150 * kg },
    { name: 'crimp', rated: 113 * kg, fraction: 0.9 },
    { name: 'leader', rated: 113 * kg },
];

test('sound tackle parts at the knot in the main line', () => {
    const answer = weakestLink(tackle);
    expect(answer).toMatchObject({ kind: 'weakest', fraction: 0.97 });
    if (answer.kind === 'weakest') {
        expect(answer.link.name).toBe('bimini');
        expect(answer.holds).toBeCloseTo(0.97 * 22.6 * kg, 10);
        expect(answer.ranked.map(({ link }) => link.name)).toEqual([
            'bimini',
            'line',
            'double',
            'crimp',
            'leader',
            'swivel',
        ]);
    }
});

test('a good-looking crimp at 15 % of the leader parts before the line', () => {
    const answer = weakestLink(
        tackle.map((link) => (link.name === 'crimp' ? { ...link, fraction: 0.15 } : link)),
    );
    expect(answer).toMatchObject({ kind: 'weakest', link: { name: 'crimp' }, fraction: 0.15 });
});

test('a load put on suddenly doubles: a mass dropped on a spring at rest reaches twice the static stretch', () => {
    // Energy: ½ k x² = m g x, so x = 2 m g / k.
    const [mass, rate] = [2, 350];
    let [x, v] = [0, 0];
    let most = 0;
    for (let step = 0; step < 20000; step++) {
        v += 1e-4 * (kg - (rate / mass) * x);
        x += 1e-4 * v;
        most = Math.max(most, x);
    }
    expect((most * rate) / (mass * kg)).toBeCloseTo(SHOCK, 3);
});

test('no links, a strength of zero and a share above one are named', () => {
    expect(weakestLink([]).kind).toBe('no-links');
    expect(weakestLink([{ name: 'line', rated: 0 }])).toMatchObject({
        kind: 'bad-link',
        link: { name: 'line' },
    });
    expect(weakestLink([{ name: 'knot', rated: 9, fraction: 1.1 }]).kind).toBe('bad-link');
    expect(weakestLink([{ name: 'knot', rated: 9, fraction: Number.NaN }]).kind).toBe('bad-link');
});

test('nothing in the tackle holds less than the weakest link', () => {
    const link = fc.record({
        name: fc.string(),
        rated: fc.double({ min: 1, max: 5000, noNaN: true }),
        fraction: fc.double({ min: 0.01, max: 1, noNaN: true }),
    });
    fc.assert(
        fc.property(fc.array(link, { minLength: 1 }), (links) => {
            const answer = weakestLink(links);
            if (answer.kind !== 'weakest') throw new Error(answer.kind);
            expect(answer.holds).toBe(Math.min(...links.map(({ rated, fraction }) => rated * fraction)));
        }),
    );
});
