/** A whole document of version 1, as that version wrote it: a hoop with test bends and with texts as typed. */
export const versionOneJob = {
  format: 'hoopwright-job',
  version: 1,
  title: 'Landing stage boarding frame',
  customer: 'a rowing club',
  drawingNumber: 'LS-1',
  note: 'Made-up example: club, sizes, readings and rates are invented. Two equal frames hold the hand rail of a landing stage.',
  invented: true,
  units: {
    length: 'mm',
    fraction: 16,
  },
  asTyped: {
    '/tube/outsideDiameter': '1-1/2 in',
    '/machine/dieRadius': '4 1/2 in',
    '/machine/gripLength': '3 in',
    '/machine/largestAngle': '180°',
    '/machine/angleScatter': 'half',
    '/machine/leastStraight': '76,2',
    '/machine/springback/bends/1/measuredAngle': '87,4',
    '/frame/width/value': '37 3/8 in',
  },
  tube: {
    outsideDiameter: 38.1,
    wall: 1.65,
    grade: {
      from: 'catalogue',
      key: '316L',
    },
  },
  machine: {
    name: 'Draw bender of the example',
    dieRadius: 114.3,
    springback: {
      method: 'test-bends',
      bends: [
        {
          commandedAngle: 45,
          measuredAngle: 43.6,
          measuredRadius: null,
        },
        {
          commandedAngle: 90,
          measuredAngle: 87.4,
          measuredRadius: 116.5,
        },
      ],
    },
    gripLength: 76.2,
    leastStraight: 76.2,
    trimAllowance: 150,
    stretchPerBend: 0,
    rotationSign: 1,
    angleScatter: 0.4,
    largestAngle: 180,
  },
  frame: {
    shape: 'hoop',
    width: {
      value: 950,
      reference: 'outside',
    },
    widthAtFeet: null,
    leftLeg: {
      value: 600,
      reference: 'outside',
    },
    rightLeg: {
      value: 600,
      reference: 'outside',
    },
    crossbar: {
      form: 'crowned',
      radius: 2400,
    },
    innerCrossbars: [
      {
        fromFoot: {
          value: 250,
          reference: 'centre',
        },
      },
    ],
  },
  cameBack: {
    tapeAccuracy: 1,
    frame: {
      shape: 'hoop',
      width: {
        value: 983,
        reference: 'outside',
      },
      widthAtFeet: {
        value: 976,
        reference: 'outside',
      },
      leftLeg: {
        value: 701,
        reference: 'outside',
      },
      rightLeg: {
        value: 614,
        reference: 'outside',
      },
      crossbar: {
        form: 'crowned',
        radius: 2400,
      },
      innerCrossbars: [
        {
          fromFoot: {
            value: 351,
            reference: 'centre',
          },
        },
      ],
    },
  },
  closing: {
    gap: 0,
    kerf: 1.2,
    shrinkage: 0.5,
    joints: 'best',
    cutOffset: 0,
    spread: 335,
    paperThickness: 0.1,
    way: null,
  },
  purge: {
    gas: {
      from: 'grade',
      key: '5.0',
    },
    prePurgeFlow: 10,
    weldingFlow: 5,
    targetOxygen: 50,
    extent: 'whole-frame',
    damDistance: 150,
    feed: null,
    vent: null,
    ventBore: 6,
    ventHoles: 'none',
    model: 'well-mixed',
    hold: 60,
    room: {
      volume: 30,
      fanFlow: 0,
    },
    bottle: {
      waterVolume: 20,
      gaugePressure: 150,
      temperature: 15,
    },
  },
  welding: {
    travelSpeed: 1.5,
    torchFlow: 8,
    postFlow: 8,
    fillerDiameter: 1.6,
  },
  rates: {
    currency: 'EUR',
    minorDigits: 2,
    date: '2026-11-02',
    tubePerMetre: 1450,
    gasPerCubicMetre: 1100,
    fillerPerKilogram: null,
    labourPerHour: {
      bend: 5200,
      cut: 4600,
      fit: 5200,
      purge: 4600,
      weld: 5600,
      finish: null,
    },
    times: {
      bend: {
        setUp: 20,
        each: 4,
      },
      cut: {
        setUp: 10,
        each: 6,
      },
      fit: {
        setUp: 15,
        each: 8,
      },
      purge: {
        setUp: 10,
        each: 5,
      },
      weld: {
        setUp: 10,
        each: 6,
      },
      finish: {
        setUp: null,
        each: 12,
      },
    },
  },
  print: {
    paper: 'a4',
    templateStations: 16,
  },
} as const;
