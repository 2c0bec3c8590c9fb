import { describe, expect, test } from 'vitest';
import { sceneFromAbove } from '../../language/src/drawing/scene.ts';
import { sceneFromSide } from '../../language/src/drawing/scene-side.ts';
import { summaryText } from '../../language/src/drawing/summary.ts';
import { svgOf } from '../../language/src/drawing/svg.ts';
import { analyse } from '../../language/src/plan/analyse.ts';
import { loadText } from '../../language/src/plan/load.ts';
import { Gathered } from '../../language/src/plan/resolve/gather.ts';
import { resolveDocument } from '../../language/src/plan/resolve.ts';
import { createServices } from '../../language/src/plan/services.ts';

const text = `
boat dunlin "Dunlin" {
    length 10.8 m
    waterline 9.7 m
    beam 3.6 m
    speed 6 kn to 10 kn
    first crest 6.5 m at 8 kn
    outriggers {
        length 6.4 m
        foot { ahead 3.1 m  out 1.7 m  up 2.3 m }
        rise 45 deg
        sweep 70 deg
        halyards 3.4 m, 6.0 m
    }
    flat clip { ahead 0.1 m  out 1.4 m  up 1.1 m }
}
lure ink-pusher "Ink" pusher { length 330 mm  weight 290 g }
lure slim-slant "Slim" slant { length 210 mm }
lure green-jet "Green" jet { length 240 mm }

spread morning "Morning three" {
    boat dunlin
    speed 8 kn
    port short corner { lure ink-pusher  back wave 2  from flat clip }
    starboard short rigger { lure green-jet  back 34 m }
    port long rigger { lure slim-slant  back 150 ft }
    starboard long rigger { lure slim-slant }
}
`;

const {
    documents: [document],
} = await loadText(createServices(), text);
const [plan] = resolveDocument(document!, new Gathered(), () => true).spreads.map(analyse);
const scene = sceneFromAbove(plan!);

describe('a plan drawn from its text', () => {
    const said = (id: string) => {
        const at = [...scene.elements, ...scene.notes].find((element) => element.id === id)?.at;
        return at && text.slice(at.start, at.end);
    };

    test('leads from every mark on it to the words that put it there', () => {
        expect(said('lure:port short corner')).toBe('ink-pusher');
        expect(said('line:port long rigger')).toBe('150 ft');
        expect(said('note:starboard short rigger')).toBe('starboard short rigger');
        expect(said('hull')).toBe('dunlin');
        expect(said('tow:port short corner')).toBe('from flat clip');
    });

    test('puts lures on the wave asked for, and repeats the unit that its author used', () => {
        const note = (position: string) => scene.notes.find((each) => each.position === position)!;
        // Crests 10.85 m apart at 8 kn, the first 6.5 m astern: 0.4 of a wave before the second is 13.0 m, and a
        // little more 1.4 m off the centreline (deep-water waves, length 2πV²/g).
        expect(note('port short corner').astern).toBeCloseTo(13.1, 1);
        expect(note('port short corner').wave).toBe('wave 2');
        expect(note('port long rigger').distance).toBe('150 ft');
        expect(note('port long rigger').astern).toBeCloseTo(45.72, 2);
    });

    test('has poles where length, rise and sweep put them', () => {
        const pole = scene.elements.find(({ id }) => id === 'pole:port');
        if (pole?.role !== 'pole') throw new Error('The boat has outriggers.');
        // Plan length 6.4·cos 45° = 4.525 m: 4.525·sin 70° = 4.252 m out, 4.525·cos 70° = 1.548 m ahead of the foot.
        expect(pole.tip[0]).toBeCloseTo(3.1 + 1.548, 2);
        expect(pole.tip[1]).toBeCloseTo(1.7 + 4.252, 2);
        expect(pole.halyards).toHaveLength(2);
    });

    test('draws what it can of a line without a distance, and says what is missing', () => {
        const ids = scene.elements.map(({ id }) => id);
        expect(ids).toContain('tow:starboard long rigger');
        expect(ids).not.toContain('lure:starboard long rigger');
        expect(scene.unknown.join(' ')).toContain('Starboard long rigger');
    });

    test('makes a sheet, a side view and a table of it without a hole', () => {
        expect(svgOf(scene)).not.toMatch(/NaN|undefined/);
        expect(sceneFromSide(plan!).elements.filter(({ role }) => role === 'line')).toHaveLength(3);
        expect(summaryText(scene, 160)).toContain('150 ft');
    });
});
