import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Change, compare, reversed } from '../../language/src/plan/compare/compare.ts';
import { loadText } from '../../language/src/plan/load.ts';
import type { Spread } from '../../language/src/plan/model.ts';
import { Gathered } from '../../language/src/plan/resolve/gather.ts';
import { resolveDocument } from '../../language/src/plan/resolve.ts';
import { createServices } from '../../language/src/plan/services.ts';

const tackle = `
boat dunlin "Dunlin" { length 10.8 m  beam 3.6 m  speed 6 kn to 10 kn }
lure bell "Bell" pusher { length 330 mm  weight 290 g }
lure rope "Rope" slant { length 210 mm }
lure jetty "Jetty" jet { length 240 mm }
outfit heavy "Heavy" { line nylon { class 37 kg }  drag { set 4 kg  hooked 30% } }
outfit light "Light" { line nylon { class 24 kg }  drag { set 3 kg } }
`;

async function plansOf(text: string): Promise<readonly Spread[]> {
    const {
        documents: [document],
    } = await loadText(createServices(), text);
    return resolveDocument(document!, new Gathered(), () => true).spreads;
}

async function planOf(body: string, more = tackle): Promise<Spread> {
    const [plan] = await plansOf(`${more}\nspread day "Day" {\n    boat dunlin\n${body}\n}`);
    return plan!;
}

async function changes(before: string, after: string, more?: string): Promise<Change[]> {
    return compare(await planOf(before), await planOf(after, more));
}

const corner = 'port short corner { outfit heavy  lure bell  back 12 m }';
const rigger = 'starboard long rigger { outfit light  lure rope  back 150 ft }';

describe('two plans compared', () => {
    test('tell a moved lure by where it was and where it is, in the words of each author', async () => {
        expect(await changes(corner, corner.replace('12 m', '40 ft'))).toEqual([
            { kind: 'line', position: 'port short corner', path: ['back'], before: '12 m', after: '40 ft' },
        ]);
        expect(await changes(corner, corner.replace('12 m', 'wave 2'))).toEqual([
            { kind: 'line', position: 'port short corner', path: ['back'], before: '12 m', after: 'wave 2' },
        ]);
    });

    test('find no change where only the writing differs', async () => {
        const spaced = `starboard long rigger {
            // further out
            back 45.72 m
            lure rope
            outfit light
        }`;
        expect(await changes(`speed 8 kn ${corner} ${rigger}`, `${spaced}\nspeed 8kn\n${corner}`)).toEqual(
            [],
        );
    });

    test('tell two lures that changed places as one swap', async () => {
        const found = await changes(
            `${corner} ${rigger}`,
            `${corner.replace('bell', 'rope')} ${rigger.replace('lure rope', 'lure bell')}`,
        );
        expect(found).toEqual([
            {
                kind: 'swap',
                positions: ['port short corner', 'starboard long rigger'],
                what: 'gear',
                before: ['Bell', 'Rope'],
                after: ['Rope', 'Bell'],
            },
        ]);
    });

    test('tell what is new, what is gone, and what moved to a position of its own', async () => {
        expect(await changes(corner, `${corner} ${rigger}`)).toEqual([
            { kind: 'position', position: 'starboard long rigger', after: 'Rope' },
        ]);
        expect(await changes(`${corner} ${rigger}`, corner)).toEqual([
            { kind: 'position', position: 'starboard long rigger', before: 'Rope' },
        ]);
        const [moved, ...more] = await changes(
            rigger,
            rigger.replace('starboard', 'port').replace('150 ft', '40 m'),
        );
        expect(more).toEqual([]);
        expect(moved).toEqual({
            kind: 'moved',
            before: 'starboard long rigger',
            after: 'port long rigger',
            held: 'Rope',
            differences: [{ path: ['back'], before: '150 ft', after: '40 m' }],
        });
    });

    test('tell the plan’s own properties, and notes that came and went', async () => {
        const found = await changes(
            'speed 8 kn  note "gloves on"',
            'speed 7.5 kn  crew 3  note "knives away"',
        );
        expect(found).toEqual([
            { kind: 'plan', path: ['crew'], after: '3' },
            { kind: 'plan', path: ['notes'], before: 'gloves on' },
            { kind: 'plan', path: ['notes'], after: 'knives away' },
            { kind: 'plan', path: ['speed'], before: '8 kn', after: '7.5 kn' },
        ]);
    });

    test('tell a definition that is another one under the same name, once, however many positions use it', async () => {
        const two = `${corner} port long corner { outfit heavy  lure bell  back 20 m }`;
        const found = await changes(two, two, tackle.replace('290 g', '310 g'));
        expect(found).toEqual([
            {
                kind: 'definition',
                of: 'lure',
                name: 'bell',
                path: ['weight'],
                before: '290 g',
                after: '310 g',
            },
        ]);
    });

    test('tell a drag where it is set for a position', async () => {
        const found = await changes(corner, corner.replace('back', 'drag { hooked 11 kg }  back'));
        expect(found).toEqual([
            {
                kind: 'line',
                position: 'port short corner',
                path: ['drag', 'hooked'],
                before: '30 %',
                after: '11 kg',
            },
        ]);
    });
});

const positions = [
    'port short corner',
    'starboard long corner',
    'port long rigger',
    'starboard short rigger',
    'shotgun',
];

const lineOf = fc.record({
    lure: fc.constantFrom('bell', 'rope', 'jetty'),
    outfit: fc.constantFrom('heavy', 'light'),
    back: fc.oneof(
        fc.integer({ min: 2, max: 7 }).map((wave) => `wave ${wave}`),
        fc.integer({ min: 10, max: 60 }).map((metres) => `${metres} m`),
        fc.integer({ min: 40, max: 180 }).map((feet) => `${feet} ft`),
    ),
});

const body = fc
    .record({
        speed: fc.option(fc.integer({ min: 5, max: 10 })),
        notes: fc.subarray(['gloves on', 'knives away', 'watch the weed']),
        lines: fc.record(Object.fromEntries(positions.map((position) => [position, fc.option(lineOf)]))),
    })
    .map(
        ({ speed, notes, lines }) =>
            `${speed === null ? '' : `speed ${speed} kn`}\n${notes.map((note) => `note "${note}"`).join('\n')}\n` +
            Object.entries(lines)
                .flatMap(([position, line]) =>
                    line ? `${position} { outfit ${line.outfit}  lure ${line.lure}  back ${line.back} }` : [],
                )
                .join('\n'),
    );

describe('any two plans', () => {
    test('compared one way and the other tell the same changes', async () => {
        await fc.assert(
            fc.asyncProperty(body, body, async (one, other) => {
                const [a, b] = [await planOf(one), await planOf(other)];
                expect(compare(b, a)).toEqual(compare(a, b).map(reversed));
            }),
            { numRuns: 60 },
        );
    });

    test('are the same exactly when nothing is told', async () => {
        await fc.assert(
            fc.asyncProperty(body, body, async (one, other) => {
                const [a, b, again] = [
                    await planOf(one),
                    await planOf(other),
                    await planOf(one.replaceAll('\n', '\n\n')),
                ];
                expect(compare(a, again)).toEqual([]);
                if (one !== other) expect(compare(a, b)).not.toEqual([]);
            }),
            { numRuns: 60 },
        );
    });
});
