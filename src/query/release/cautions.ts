/** What whoever works on the coach next must keep in mind, whatever else their sheet says. */
export const CAUTIONS: readonly string[] = [
  'Weigh again when your work is done. What was added but not recorded is in no figure.',
  'Ratings, labels and manuals of the chassis maker come before this sheet; so do local codes.',
  'A place that this sheet does not name is not proven clear: open up and look before drilling, cutting or screwing.',
  'Before welding, sanding near wires or baking paint: isolate batteries and shore line, shut and vent gas, and ask the chassis maker which control units to disconnect. Electric, gas and air work is for those licensed for it.',
  'Do not stand, lift or jack on anything that is not declared for it by its author.',
  'Do not paint over the vehicle identification number, certification and tyre labels, or the chassis maker’s plates; keep paint off tyres, air springs, brake hoses, sensors and lamps.',
];
