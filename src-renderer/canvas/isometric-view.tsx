/** The networks of the level as isometrics. */
export const IsometricView = () => <p className="side-view-empty">Draw pipe: its isometric appears here.</p>;
