/** What whoever works on the coach next must keep in mind, whatever else their sheet says. */
export const CAUTIONS: readonly string[] = [
  'Weigh again when your work is done. What was added but not recorded is in no figure.',
  'Ratings, labels and manuals of the chassis maker come before this sheet; so do local codes.',
  'A place that this sheet does not name is not proven clear: take the panel off and look before you drill, cut or screw.',
  'Before welding, sanding near wires or baking paint: isolate batteries and shore line, shut and vent gas, and ask the chassis maker which control units to disconnect. Electric, gas and air work is for those licensed for it.',
  'Do not stand on, lift by or jack on anything that nobody has declared for it.',
  'Do not paint over the vehicle identification number, certification and tire labels, or the chassis maker’s plates; keep paint off tires, air springs, brake hoses, sensors and lamps.',
];
