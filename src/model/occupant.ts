/** A person in a designated seat, where nobody weighed them: 68 kg, 150 lb on a label in pounds (49 CFR 567.4(g)(3); 571.110 S3 up to 10,000 lb of GVWR). */
export const OCCUPANT_KG = 68;
export const OCCUPANT_LB = 150;
