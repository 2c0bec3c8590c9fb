import type { Spread } from '../../plan/model.ts';

/**
 * What is printed on every card, whatever the plan. The rules on look-outs and on vessels engaged in fishing are
 * those of the International Regulations for Preventing Collisions at Sea, 1972; the rest is common practice.
 */
export function cautionsFor({ weatherLimit }: Pick<Spread, 'weatherLimit'>): string[] {
    return [
        'Leader: gloves on; never round a hand, an arm, a foot or the body, and always so that you can let go.',
        'Hooks: whatever is cleared is stowed and its hooks covered before anybody steps past it.',
        'Propeller: nobody clears a fouled line before the engine is stopped and the key is out.',
        'Lookout: somebody always keeps one, by sight and hearing (COLREGs, rule 5). Trolling lines do not make a boat “engaged in fishing” and give no right of way (rule 3 d).',
        'Overboard: life jackets worn, the cut-off lanyard clipped to the helm, and everybody knows what is done when somebody goes in.',
        'Bills: the boat in gear ahead, the fish alongside, its bill pointing at nobody.',
        weatherLimit
            ? `Weather: the skipper’s own limit is “${weatherLimit.value}”, and sooner whenever the skipper says so.`
            : 'Weather: this plan says no limit; the skipper names one before the lines go in.',
        'Figures are planning aids: a scale, a measured crest and the skipper’s judgement come first. Local law and the event’s current rules come before this card: check both.',
    ];
}
