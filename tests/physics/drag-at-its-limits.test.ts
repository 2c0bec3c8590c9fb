import { expect, test } from 'vitest';
import { dragOverSpool } from '../../language/src/physics/drag.ts';

const spool = { fullRadius: 0.05, arborRadius: 0.025, capacity: 800 };

test('a drag that cannot be is refused in a sentence', () => {
    const reasonOf = (wrong: Partial<Parameters<typeof dragOverSpool>[0]>) => {
        const answer = dragOverSpool({ spool, setting: 60, ...wrong });
        return 'reason' in answer ? [answer.kind, answer.reason] : [answer.kind];
    };
    expect(reasonOf({})).toEqual(['drag']);
    expect(reasonOf({ measuredWith: 801 })).toEqual([
        'bad-setting',
        'The drag was measured with more line than the spool holds.',
    ]);
    const noSpool = ['bad-spool', 'A spool needs an arbor smaller than its full radius, and a capacity.'];
    expect(reasonOf({ spool: { ...spool, arborRadius: 0.05 } })).toEqual(noSpool);
    expect(reasonOf({ spool: { ...spool, capacity: 0 } })).toEqual(noSpool);
    expect(reasonOf({ setting: 0 })).toEqual(['bad-setting', 'The drag is not above zero.']);
    expect(reasonOf({ run: -1 })).toEqual(['bad-setting', 'The expected run is below zero.']);
});

test('a run that takes the last metre leaves the drag of the arbor, one more metre leaves nothing', () => {
    const after = (run: number) => {
        const answer = dragOverSpool({ spool, setting: 60, run });
        return answer.kind === 'drag' ? answer.afterRun : answer.kind;
    };
    // Half the radius, twice the force.
    expect(after(800)).toMatchObject({ left: 0, force: expect.closeTo(120, 9) });
    expect(after(800.1)).toBe('spooled');
});
