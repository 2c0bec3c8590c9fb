import type { Property } from './property.ts';

export const NOTE: Property = {
    word: 'note',
    example: 'note "spare in the port locker"',
    says: 'A remark, printed as it is.',
    many: true,
};

export const STEP: Property = {
    word: 'step',
    example: 'step "lever at set drag, ratchet on"',
    says: 'A step of setting the line, in the order written.',
    many: true,
};

export const DRAGS: readonly Property[] = [
    {
        word: 'set',
        dimension: 'load',
        orShare: true,
        example: 'set 2.4 kg',
        says: 'Drag while trolling.',
        sane: [0, 600],
    },
    {
        word: 'hooked',
        dimension: 'load',
        orShare: true,
        example: 'hooked 6 kg',
        says: 'Drag once the fish is on.',
        sane: [0, 600],
    },
    {
        word: 'full',
        dimension: 'load',
        orShare: true,
        example: 'full 10 kg',
        says: "Drag at the end of the lever's travel.",
        sane: [0, 600],
    },
];

export const BOAT_RANGE: Property = {
    word: 'speed',
    dimension: 'speed',
    example: 'speed 6 kn to 10 kn',
    says: 'The speeds through the water that it suits.',
    sane: [0, 30],
};
