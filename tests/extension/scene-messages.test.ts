import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { fromPage, keptFrom, toPage } from '../../extension/src/diagram/messages.ts';
import { sceneOfStrike } from '../../language/src/drawing/scene-strike.ts';
import { type ExamplePlan, examplePlans, turnSceneOf } from '../drawing/examples.ts';

const shown = { uri: 'file:///plans/a.spread', plan: 'first', view: 'turn', pinned: false } as const;
/** As it comes over a wire. */
const sent = <T>(value: T): T => JSON.parse(JSON.stringify(value));
const around = { shown, palette: 'light', places: ['line:shotgun'] };

let examples: readonly ExamplePlan[];
beforeAll(async () => {
    examples = await examplePlans();
});

describe('scenes that the page draws', () => {
    test('arrive as they were sent, of every example', () => {
        for (const example of examples) {
            const turn = sent({ kind: 'turn', ...around, scene: turnSceneOf(example) });
            expect(toPage(turn)).toEqual(turn);
            const strike = sent({ kind: 'strike', ...around, scene: sceneOfStrike(example.plan) });
            expect(toPage(strike)).toEqual(strike);
        }
        expect(examples.length).toBeGreaterThan(3);
    });

    test('are not taken with any part of them missing or of another kind', () => {
        const [example] = examples as [ExamplePlan];
        const optional = ['radius', 'chosen', 'at', 'nearest', 'trouble', 'strike', 'other', 'spool', 'load'];
        for (const [kind, scene] of [
            ['turn', sent(turnSceneOf(example))],
            ['strike', sent(sceneOfStrike(example.plan))],
        ] as const) {
            for (const key of Object.keys(scene).filter((each) => !optional.includes(each))) {
                const { [key as never]: _, ...rest } = scene;
                expect(toPage({ kind, ...around, scene: rest }), `${kind} without ${key}`).toBeUndefined();
                const odd = { ...scene, [key]: { toString: 'odd' } };
                expect(toPage({ kind, ...around, scene: odd }), `${kind} with an odd ${key}`).toBeUndefined();
            }
        }
    });

    test('are not taken where their numbers do not go together', () => {
        const scene = sent(turnSceneOf(examples[0]!));
        const short = { ...scene, boat: scene.boat.slice(1) };
        expect(toPage({ kind: 'turn', ...around, scene: short })).toBeUndefined();
        const [line, ...lines] = scene.lines;
        const cut = { ...scene, lines: [{ ...line!, path: line!.path.slice(2) }, ...lines] };
        expect(toPage({ kind: 'turn', ...around, scene: cut })).toBeUndefined();
    });
});

describe('what a view is asked for', () => {
    test('is taken where it makes sense, and nothing beside it', () => {
        const choice = { turn: { side: 'port', radius: 60 }, strike: { line: 'shotgun', style: 'direct' } };
        expect(fromPage({ kind: 'choose', choice })).toEqual({ kind: 'choose', choice });
        expect(
            fromPage({ kind: 'choose', choice: { turn: { side: 'port', more: 1 }, uri: 'file:///etc' } }),
        ).toEqual({ kind: 'choose', choice: { turn: { side: 'port' } } });
    });

    test.each([
        { turn: { side: 'up' } },
        { turn: { radius: 0 } },
        { turn: { radius: Number.NaN } },
        { turn: { radius: 1e9 } },
        { strike: { line: '' } },
        { strike: { style: 'slow' } },
        { earlier: { uri: 7, plan: 'x' } },
        'turn',
        null,
    ])('%j is not taken', (choice) => {
        expect(fromPage({ kind: 'choose', choice })).toBeUndefined();
    });

    test('comes back after a reload, as far as it makes sense', () => {
        const choice = { earlier: 'commit', turn: { side: 'starboard' } };
        expect(keptFrom({ shown: { ...shown, choice } })).toEqual({ shown: { ...shown, choice } });
        expect(keptFrom({ shown: { ...shown, choice: { turn: 1 } } })).toEqual({ shown });
    });

    test('whatever comes, nothing throws', () => {
        fc.assert(
            fc.property(fc.anything(), (scene) => {
                for (const kind of ['turn', 'strike']) toPage({ kind, ...around, scene });
                fromPage({ kind: 'choose', choice: scene });
            }),
        );
    });
});
