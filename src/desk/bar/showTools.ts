import { useLooks } from "../../store/index.js";
import { words } from "../../words/index.js";
import type { BarTool } from "./barTool.js";

/** What of the ground and the job the scene shows, each switched on and off. */
export function useShowTools(): readonly BarTool[] {
  const { depths, through, machines, setbacks, steep, look } = useLooks();
  const said = words.shading;
  return [
    {
      id: "depths",
      name: said.depths,
      title: said.depthsTitle,
      on: depths,
      press: () => look({ depths: !depths }),
    },
    {
      id: "through",
      name: said.through,
      title: said.throughTitle,
      on: through,
      press: () => look({ through: !through }),
    },
    {
      id: "machines",
      name: said.machines,
      title: said.machinesTitle,
      on: machines,
      press: () => look({ machines: !machines }),
    },
    {
      id: "setbacks",
      name: words.limits.setbacks,
      title: words.limits.setbacksTitle,
      on: setbacks,
      press: () => look({ setbacks: !setbacks }),
    },
    {
      id: "steep",
      name: words.limits.steep,
      title: words.limits.steepTitle,
      on: steep,
      press: () => look({ steep: !steep }),
    },
  ];
}
