/** Where the hand is about to go: behind walls run wires and gas, and what stayed wet may grow mould. */
export const WallCaution = () => (
  <details className="caution-box">
    <summary>Before you probe or open a wall</summary>
    <p>
      Wires and gas lines run in walls: shore power, generator, inverter and battery off, gas shut at the cylinder, short pins only. What stayed wet for days may hold mould:
      gloves, eye cover and a mask, and hand it over where somebody is sensitive or it is large. Stay off a wet roof. The rig’s manual, local rules and licensed trades come first.
    </p>
  </details>
);
