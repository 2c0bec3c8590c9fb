import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { layback } from './layback.ts';

const plans = resolve(import.meta.dirname, '../../examples/plans');
const draw = (file: string, ...args: string[]) =>
    layback(['draw', `${plans}/${file}.spread`, '-o', '-', ...args]);

describe('layback draw', () => {
    test('draws a turn to the side and at the radius asked', () => {
        const { status, stdout } = draw(
            'blue-marlin',
            ...['--plan', 'bank-settled', '--view', 'turn', '--to', 'starboard', '--radius', '200 ft'],
        );
        expect(status).toBe(0);
        expect(stdout).toContain('A half turn to starboard at');
        expect(stdout).toContain('data-view="turn"');
    });

    test('draws a strike at the position and in the style asked', () => {
        const { status, stdout } = draw(
            'blue-marlin',
            ...[
                '--plan',
                'bank-settled',
                '--view',
                'strike',
                '--position',
                'port long rigger',
                '--style',
                'direct',
            ],
        );
        expect(status).toBe(0);
        expect(stdout).toContain('A bite on the port long rigger, hooked directly');
    });

    test('draws a plan over another of its file, and over the same of another file', () => {
        const within = draw(
            'blue-marlin',
            ...['--plan', 'bank-rough', '--view', 'compare', '--before-plan', 'bank-settled'],
        );
        expect(within.stdout).toContain('Rough day on the bank, against Settled day on the bank');
        const same = draw(
            'blue-marlin',
            ...['--plan', 'bank-rough', '--view', 'compare', '--before', `${plans}/blue-marlin.spread`],
        );
        expect(same.stdout).toContain('Nothing has changed since Rough day on the bank.');
    });

    test.each([
        [
            ['--view', 'strike', '-p', 'bank-settled', '--position', 'port long riger'],
            'Did you mean port long rigger?',
        ],
        [['--view', 'compare', '-p', 'bank-settled'], 'To compare with what?'],
        [
            ['--view', 'compare', '-p', 'bank-settled', '--before-plan', 'bank-smooth'],
            '--before-plan names one of',
        ],
        [['--view', 'turn', '--radius', '60'], '60 has no unit'],
        [['--view', 'turn', '--radius', '2 m'], 'It takes 5 m to 5000 m'],
        [['--view', 'turn', '--to', 'left'], 'It takes port or starboard'],
        [['--view', 'side', '--radius', '60 m'], '--radius belongs to --view turn; this is --view side.'],
        [['--position', 'port short corner'], '--position belongs to --view strike'],
    ])('says what it cannot do: %j', (args, says) => {
        const { status, stdout, stderr } = draw('blue-marlin', ...args);
        expect([status, stdout]).toEqual([2, '']);
        expect(stderr).toContain(says);
    });

    test('shows why there is no turn where there is none', () => {
        const { status, stdout } = draw('what-slips-look-like', '--view', 'turn');
        expect(status).toBe(0);
        expect(stdout).toContain('No turn can be shown.');
    });
});
