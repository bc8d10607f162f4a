package org.skeinday.motor;

import java.util.List;

/** Torque while a motor was wound, walk-in included. Says what was put in by torque, never what will come back. */
public record WindingCurve(TorqueCurve curve) {
    public static WindingCurve of(List<TorqueReading> readings) {
        return new WindingCurve(TorqueCurve.of(readings));
    }

    /**
     * The torque work while winding, 2π∫T dN, in millijoules. It is not the motor's energy: stretching and stepping
     * in put in and give back axial work beside it.
     */
    public double torqueWorkMillijoules() {
        return curve.workMillijoules(curve.firstMotorTurns(), curve.lastMotorTurns());
    }
}
