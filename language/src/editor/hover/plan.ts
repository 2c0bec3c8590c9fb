import { gearWords, titleOf } from '../../drawing/words.ts';
import type { AnalysedPlan } from '../../plan/figures.ts';
import type { Waiver } from '../../plan/model.ts';
import type { Remark } from '../late.ts';
import { known } from './line.ts';
import { doc, type Part, rows, text, title } from './page.ts';
import type { Speech } from './speech.ts';

/** A plan as it stands with everything that it takes over: conditions, waves, what runs where, what it waives. */
export function aboutPlan(analysed: AnalysedPlan, remarks: readonly Remark[], speech: Speech): Part[] {
    const { plan, lines } = analysed;
    return [
        title(plan.title, plan.like.length > 0 ? `like ${plan.like.join(', ')}` : 'spread'),
        ...doc(plan.doc),
        ...rows([
            ['Boat', plan.boat?.value.title],
            ['For', plan.target?.value.title],
            ['Method', plan.method?.value.title],
            ['Speed', plan.speed && speech.speed(plan.speed.si, plan.speed)],
            ['Waves', wavesIn(analysed, speech)],
            ['Event', plan.event?.value.title],
        ]),
        ...rows(
            lines.map(({ line, astern, wave }) => [
                titleOf(line.position),
                gearWords(line) ?? 'nothing',
                known(astern, (si) => speech.length(si)),
                known(wave, (at) => `wave ${at.wave}${at.onFace ? '' : ', off its face'}`),
            ]),
            ['Position', 'Tows', 'Astern', ''],
        ),
        ...(plan.waivers.length > 0 ? [text(`Waived: ${plan.waivers.map(waiverWords).join('; ')}.`)] : []),
        ...remarks.filter((each) => each.plan === plan.name).map((each) => text(`${each.title}.`)),
    ];
}

export function wavesIn({ waves }: AnalysedPlan, speech: Speech): string | undefined {
    return known(waves, ({ wavelength, firstCrest, firstCrestMeasured, doubt }) =>
        [
            `${speech.length(wavelength)} apart, the first crest ${speech.length(firstCrest)} astern`,
            firstCrestMeasured ? ' (measured)' : ' (estimate)',
            doubt ? `. ${doubt}` : '',
        ].join(''),
    );
}

function waiverWords({ rule, positions, because, inherited }: Waiver): string {
    const on = positions.map(({ value }) => value.name).join(' and ');
    const told = [rule.value, on && `on ${on}`, because && `because ${because.value}`]
        .filter(Boolean)
        .join(' ');
    return inherited ? `${told} (taken over)` : told;
}
