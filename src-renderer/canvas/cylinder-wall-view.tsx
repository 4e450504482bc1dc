/** The wall behind the cylinders, seen from the room. */
export const CylinderWallView = () => <p className="side-view-empty">Stand a cylinder: the wall behind it appears here.</p>;
