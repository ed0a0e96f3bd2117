// Sheet gauge tables. Three tables share the same gauge numbers and none equals another; the
// framing series is a fourth, of minimum base thickness.
//
// msg: Manufacturers' Standard Gage, uncoated sheet; range of cold-rolled sheet (gauge chart,
//   second-hand; gauges 29 and 30 from a second chart without ranges).
// galvanized: Galvanized Sheet Gage; the thickness includes the coating (same chart).
// usc206: 15 U.S.C. 206; ounces per square foot of wrought iron at 40 psf per inch. Gauges from 22
//   on are from memory and agree with a second-hand list of the ounces.

/** gauge → [nominal, least, most], inches. */
export type GaugeTable = Readonly<Record<number, readonly [number, number?, number?]>>;

export const MSG: GaugeTable = {
  10: [0.1345, 0.1285, 0.1405],
  11: [0.1196, 0.1136, 0.1256],
  12: [0.1046, 0.0986, 0.1106],
  13: [0.0897, 0.0847, 0.0947],
  14: [0.0747, 0.0697, 0.0797],
  15: [0.0673, 0.0623, 0.0723],
  16: [0.0598, 0.0548, 0.0648],
  17: [0.0538, 0.0498, 0.0578],
  18: [0.0478, 0.0438, 0.0518],
  19: [0.0418, 0.0378, 0.0458],
  20: [0.0359, 0.0329, 0.0389],
  21: [0.0329, 0.0299, 0.0359],
  22: [0.0299, 0.0269, 0.0329],
  23: [0.0269, 0.0239, 0.0299],
  24: [0.0239, 0.0209, 0.0269],
  25: [0.0209, 0.0179, 0.0239],
  26: [0.0179, 0.0159, 0.0199],
  27: [0.0164, 0.0144, 0.0184],
  28: [0.0149, 0.0129, 0.0169],
  29: [0.0135],
  30: [0.012],
};

export const GALVANIZED: GaugeTable = {
  10: [0.1382, 0.1292, 0.1472],
  11: [0.1233, 0.1143, 0.1323],
  12: [0.1084, 0.0994, 0.1174],
  13: [0.0934, 0.0854, 0.1014],
  14: [0.0785, 0.0705, 0.0865],
  15: [0.071, 0.065, 0.077],
  16: [0.0635, 0.0575, 0.0695],
  17: [0.0575, 0.0525, 0.0625],
  18: [0.0516, 0.0466, 0.0566],
  19: [0.0456, 0.0406, 0.0506],
  20: [0.0396, 0.0356, 0.0436],
  21: [0.0366, 0.0326, 0.0406],
  22: [0.0336, 0.0296, 0.0376],
  23: [0.0306, 0.0266, 0.0346],
  24: [0.0276, 0.0236, 0.0316],
  25: [0.0247, 0.0207, 0.0287],
  26: [0.0217, 0.0187, 0.0247],
  27: [0.0202, 0.0172, 0.0232],
  28: [0.0187, 0.0157, 0.0217],
  29: [0.0172, 0.0142, 0.0202],
  30: [0.0157, 0.0127, 0.0187],
};

/** gauge → ounces per square foot. */
export const USC206_OUNCES: Readonly<Record<number, number>> = {
  10: 90,
  11: 80,
  12: 70,
  13: 60,
  14: 50,
  15: 45,
  16: 40,
  17: 36,
  18: 32,
  19: 28,
  20: 24,
  21: 22,
  22: 20,
  23: 18,
  24: 16,
  25: 14,
  26: 12,
  27: 11,
  28: 10,
  29: 9,
  30: 8,
};

/** The last gauge of 15 U.S.C. 206 that was read whole; later ones are from memory. */
export const USC206_READ_TO = 21;

/** Light steel framing, mils → minimum base thickness, inches (general article, second-hand). */
export const FRAMING_MINIMUM_IN: Readonly<Record<number, number>> = {
  18: 0.0179,
  30: 0.0296,
  33: 0.0329,
  43: 0.0428,
  54: 0.0538,
  68: 0.0677,
  97: 0.0966,
  118: 0.118,
};
