/**
 * A car that carries every kind of element, and between them every word that an element's block takes a value for. Each element
 * is there to be overridden, not to be driven: `test/together/overrides.test.ts` reads its lines.
 */
export const everyElement = `catalogue {
  torsion-bar TB-10 { diameter 10 mm, bore 2 mm, length 340 mm, modulus 78 GPa, allowable-stress 800 MPa }
  coil C-60 { wire 9 mm, mean-diameter 50 mm, active-turns 7, total-turns 9, free-length 170 mm, modulus 79 GPa }
  valving V-3 { damping 3 N*s/mm, gas-force 80 N, gas-rate 1 N/mm }
  bump-stop BS-4 { power-law { force 1200 N, deflection 9 mm, exponent 2 } }
  gas-spring GS-2 { pressure 18 bar, volume 70 ml, area 300 mm^2 }
  inerter I-9 { inertance 9 kg }
  blade BL-7 { section 7 x 20 mm, length 65 mm }
  link-spring LS-9 { rate 90 N/mm, travel 2 mm }
}

car every "Every kind of element" {
  wheelbase 2540 mm
  mass 540 kg
  mass-front 44 %
  cg-height 285 mm

  axle front {
    track 1480 mm
    wheel { centre (0, 731, 230) mm, unsprung-mass 17 kg }
    linkage planar {
      lower-wishbone { inner (190, 103) mm, outer (678, 108) mm }
      upper-wishbone { inner (235, 297) mm, outer (650, 342) mm }
      push-rod on lower-wishbone { outer (632, 128) mm, inner (226, 436) mm }
      rocker {
        pivot (190, 400) mm
        eye side (208, 463) mm
        eye third (192, 456) mm
        eye high (175, 452) mm
        eye low (175, 348) mm
        eye bar (222, 396) mm
        eye inner (150, 398) mm
      }
    }
    spring twisted for corner {
      torsion-bar { diameter 11 mm, bore 3 mm, length 360 mm, modulus 79.3 GPa, allowable-stress 900 MPa }
      twists rocker against chassis
    }
    spring coiled for corner {
      coil {
        wire 9.5 mm
        mean-diameter 46 mm
        active-turns 9
        total-turns 11
        free-length 165 mm
        bind-length 106 mm
        modulus 79.3 GPa
        allowable-stress 950 MPa
      }
      tender { rate 20 N/mm, travel 12 mm }
      between rocker.side and chassis (0, 45, 466) mm
    }
    spring stated for heave {
      rate 55 N/mm
      preload 300 N { step 20 N }
      gap 1 mm { step 0.5 mm }
      acts in-compression
      between left.rocker.third and right.rocker.third
    }
    spring curved for heave {
      curve { 0 mm: 0 N, 10 mm: 600 N, 20 mm: 1500 N }
      between left.rocker.third and right.rocker.third
    }
    spring two-way for heave {
      squat { soft 40 N/mm, knee 8 mm, hard 110 N/mm }
      rise { rate 60 N/mm }
      between left.rocker.third and right.rocker.third
    }
    spring tied for heave {
      rate 5 N*m/deg
      twists left.rocker against right.rocker
      tie { arm (-330, 190, 450) mm }
    }
    spring by-table for heave {
      rate 10 N/mm
      ratio heave 1.2
    }
    damper straight for corner {
      damping 2 N*s/mm
      gas-force 60 N
      gas-rate 0.5 N/mm
      stroke -40 .. 40 mm
      length 100 .. 240 mm
      between rocker.side and chassis (0, 45, 466) mm
    }
    damper kneed for heave {
      bump { knee 50 mm/s, slow 2.2 N*s/mm, fast 0.9 N*s/mm }
      rebound { knee 60 mm/s, slow 2.5 N*s/mm, fast 1.1 N*s/mm }
      between left.rocker.third and right.rocker.third
    }
    damper clicked for roll {
      bump {
        clicks 5 of 16
        closed { 50 mm/s: 340 N, 100 mm/s: 520 N }
        open { 50 mm/s: 100 N, 100 mm/s: 180 N }
      }
      rebound { clicks 6 of 16, 50 mm/s: 280 N, per-click 4 %, measured-at 8 }
      between left.rocker.high and right.rocker.low
    }
    inerter flywheel for corner {
      inertance 8 kg
      stroke -40 .. 40 mm
      length 100 .. 240 mm
      between rocker.side and chassis (0, 45, 466) mm
    }
    bump-stop foam for corner {
      power-law { force 900 N, deflection 10 mm, exponent 2.2 }
      gap 14 mm { step 1 mm }
      packer 3 mm
      between rocker.side and chassis (0, 45, 466) mm
    }
    anti-roll-bar bar for roll {
      torsion-bar { diameter 15 mm, bore 10 mm, length 380 mm }
      lever { pivot (70, 222, 296) mm, axis (0, 1, 0), end (0, 222, 296) mm }
      blade {
        position 3 of 5
        soft 10 deg
        stiff 80 deg
        section 7 x 20 mm
        length 70 mm
        modulus 205 GPa
        allowable-stress 950 MPa
      }
      drop-link rocker.bar { longer 0.5 mm, thread 1 mm/turn }
      link-spring { rate 160 N/mm, travel 2.5 mm }
    }
    anti-roll-bar tee for roll {
      torsion-bar { diameter 20 mm, length 160 mm }
      tee { foot (-160, 0, 300) mm, head (0, 0, 300) mm, end (0, 150, 300) mm }
      drop-link rocker.inner
    }
    gas-spring gas for heave {
      pressure 15 bar
      volume 60 ml
      area 400 mm^2
      exponent 1.3
      charge-temperature 15 degC
      working-temperature 55 degC
      gap 1 mm
      between left.rocker.third and right.rocker.third
    }
    gas-spring tapered for heave {
      pressure 15 bar
      volume 60 ml
      area-curve { 0 mm: 707 mm^2, 20 mm: 420 mm^2 }
      between left.rocker.third and right.rocker.third
    }
    actuator platform for heave {
      hold 2 mm
      between left.rocker.third and right.rocker.third
    }
    hydraulic-link roll-line for roll {
      cylinder port { between left.rocker.side and chassis (0, 45, 466) mm, area 400 mm^2, annulus-area 300 mm^2 }
      cylinder starboard { between right.rocker.side and chassis (0, -45, 466) mm, area 400 mm^2 }
      line port to starboard crossed { resistance 30 bar*s/l, bulk-modulus 1.2 GPa, volume 80 ml }
      pressure 12 bar
      accumulator { pressure 20 bar, volume 40 ml, exponent 1.2 }
    }
  }
}
`;
