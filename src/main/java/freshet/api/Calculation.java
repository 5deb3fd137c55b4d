package freshet.api;

/** One calculation as it was asked: a record whose components are the fields of the request. */
interface Calculation {

    /** The answer, a record whose components are the fields of the reply; refusals of the stones pass through. */
    Record answer();
}
