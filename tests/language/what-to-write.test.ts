import { expect, test } from 'vitest';
import { inFull } from '../../language/src/plan/analyse/in-full.ts';
import { spoolCurvesOf } from '../../language/src/plan/analyse/spool-curve.ts';
import { withTurns } from '../../language/src/plan/analyse/turns.ts';
import type { AnalysedPlan } from '../../language/src/plan/figures.ts';
import { contextsKnowing } from '../../language/src/plan/vocabulary.ts';
import { checkText, today } from './marked.ts';

const boat = `boat tern "Tern" {
    length 10 m
    beam 3.6 m
    waterline 9 m
    first crest 5 m at 8 kn
    flat clip { ahead 0.3 m  out 1.4 m  up 2.4 m }
    outriggers {
        length 6 m
        foot { ahead 2 m  out 2 m  up 2 m }
        rise 40 deg
        sweep 90 deg
        halyards 3 m, 5.5 m
    }
    holder port rigger { ahead 1 m  out 1.5 m  up 1.2 m  lean 12 deg  splay 15 deg }
    holder port corner { ahead 0.3 m  out 1.5 m  up 1.2 m  lean 12 deg  splay 15 deg }
}
`;
const reel = `rod bent { length 2 m  butt 0.5 m }
reel wheel {
    spool { full 110 mm  arbor 62 mm }
    capacity 800 m of 0.8 mm
}
`;
const outfit = `outfit fifty {
    rod bent
    reel wheel
    line nylon { diameter 0.8 mm  class 24 kg  breaks 22 kg }
    drag { set 2 kg  hooked 6 kg  full 12 kg }
}
`;
const lure = `lure ink "Ink" pusher {
    length 300 mm
    head 40 mm
    weight 250 g
    pull 2.4 kg at 8 kn
    runs 6 kn to 9 kn
    leader nylon { length 4 m  diameter 1.8 mm  breaks 120 kg }
}
bait mullet "Mullet" {
    length 280 mm
    weight 220 g
    runs 5 kn to 9 kn
}
teaser rope "Rope" {
    pull 4 kg at 8 kn
    weight 2 kg
    leader nylon { length 9 m  diameter 2 mm }
}
`;
const spread = `spread day {
    boat tern
    speed 8 kn
    sea 0.3 m
    turn within 90 m
    port short corner { outfit fifty  lure ink  back 12 m  from flat clip  clip 4 kg  wait 3 s }
    port long rigger { outfit fifty  bait mullet  back 40 m  from halyard 2  clip 4 kg  wait 3 s }
    starboard squid chain { teaser rope  back 9 m  from flat clip }
}
`;
const whole = `${boat}${reel}${outfit}${lure}${spread}`;

/** Every reason for which something of a plan is not known. */
function reasonsOf(analysed: AnalysedPlan): string[] {
    const plan = withTurns(inFull(analysed));
    const reasons = new Set<string>();
    const seek = (value: unknown, depth: number): void => {
        if (typeof value !== 'object' || value === null || depth > 6) return;
        if ('known' in value && value.known === false) reasons.add(String('reason' in value && value.reason));
        for (const [key, each] of Object.entries(value))
            if (key !== 'line' && key !== 'plan' && key !== 'origin') seek(each, depth + 1);
    };
    seek(plan, 0);
    for (const { line } of plan.lines) if (line.role === 'fished') seek({ spool: spoolCurvesOf(line) }, 0);
    return [...reasons];
}

/** Words in backticks that the language has. */
function wordsToWrite(reason: string): string[] {
    return [...reason.matchAll(/`([^`]+)`/g)]
        .map(([, word]) => word!)
        .filter((word) => contextsKnowing(word).length > 0 || ['flat clip', 'centre rigger'].includes(word));
}

test('of a plan that says everything, everything is known', async () => {
    const [plan] = (await checkText(whole)).plans;
    expect(reasonsOf(plan!)).toEqual([]);
});

const properties = whole
    .split('\n')
    .flatMap((line, index) =>
        /^\s+\w[^{]*$/.test(line) && !/^\s*\}/.test(line) ? [[index, line.trim()] as const] : [],
    );
const ofLines = [
    'outfit fifty',
    'lure ink',
    'bait mullet',
    'teaser rope',
    'back 12 m',
    'back 40 m',
    'clip 4 kg',
    'wait 3 s',
    'set 2 kg',
    'hooked 6 kg',
    'diameter 0.8 mm',
    'diameter 2 mm',
    'ahead 0.3 m',
    'up 2.4 m',
    'length 2 m',
    'full 110 mm',
    'arbor 62 mm',
    'foot { ahead 2 m  out 2 m  up 2 m }',
] as const;

test.each(properties)('without line %i, `%s`, whatever is not known says what to write', async (index) => {
    const lines = whole.split('\n');
    lines.splice(index, 1);
    await everyReasonHelps(lines.join('\n'));
});

test.each(ofLines)('without `%s`, whatever is not known says what to write', async (words) => {
    expect(whole).toContain(words);
    await everyReasonHelps(whole.replaceAll(words, ''));
});

async function everyReasonHelps(text: string): Promise<void> {
    for (const plan of (await checkText(text)).plans)
        for (const reason of reasonsOf(plan)) expect(wordsToWrite(reason), reason).not.toEqual([]);
}

test('what a sea does to the waves is told in the unit of the sea', async () => {
    const told = async (sea: string) => {
        const { plans } = await checkText(
            today(`    sea ${sea}\n    port short corner { lure broad  back wave 2 }`),
        );
        const { waves } = plans[0]!;
        return waves.known ? waves.value.doubt : waves.reason;
    };
    expect(await told('9 ft')).toMatch(/^A sea of 9 ft hides .* up to about [\d.]+ ft; .*`waves up to 9 ft`/);
    expect(await told('3 m')).toMatch(/^A sea of 3 m hides .* up to about [\d.]+ m; .*`waves up to 3 m`/);
});

test('turns say whose they are not, where a line cannot be followed', async () => {
    const leaning = async (lines: string) => {
        const { plans } = await checkText(today(lines));
        const { turns } = withTurns(plans[0]!);
        return turns?.known ? turns.leaning.join(' ') : turns?.reason;
    };
    const corner = '    port short corner { lure broad  back wave 2 }';
    expect(await leaning(`${corner}\n    shotgun { lure broad }`)).toContain(
        'Turns are those of the other lines: the shotgun cannot be followed without a tow point and a distance.',
    );
    expect(await leaning(corner)).not.toContain('cannot be followed');
});
