package org.skeinday.dayplan;

import java.util.ArrayList;
import java.util.List;

/** Variables of a model, each times a whole number. */
final class Sum {
    final List<Integer> variables = new ArrayList<>();
    final List<Long> factors = new ArrayList<>();

    static Sum of(int variable) {
        return new Sum().plus(variable, 1);
    }

    Sum plus(int variable, long factor) {
        variables.add(variable);
        factors.add(factor);
        return this;
    }

    Sum minus(Sum other) {
        for (int i = 0; i < other.variables.size(); i++) {
            plus(other.variables.get(i), -other.factors.get(i));
        }
        return this;
    }

    boolean isEmpty() {
        return variables.isEmpty();
    }
}
