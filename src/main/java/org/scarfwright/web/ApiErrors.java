package org.scarfwright.web;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.http.converter.HttpMessageNotReadableException;
import org.springframework.web.bind.MissingServletRequestParameterException;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.bind.annotation.RestControllerAdvice;
import org.springframework.web.context.request.WebRequest;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;
import org.springframework.web.servlet.mvc.method.annotation.ResponseEntityExceptionHandler;
import tools.jackson.core.JacksonException;
import tools.jackson.core.exc.StreamReadException;

/**
 * Every error of the API is a problem detail (RFC 9457). Refused input carries {@code errors}, each with a JSON pointer, the
 * field's name, its value and what would be right.
 */
@RestControllerAdvice(annotations = RestController.class)
@Order(Ordered.HIGHEST_PRECEDENCE)
class ApiErrors extends ResponseEntityExceptionHandler {
    private static final Logger log = LoggerFactory.getLogger(ApiErrors.class);

    @ExceptionHandler(InvalidInputException.class)
    ProblemDetail invalidInput(InvalidInputException e) {
        return refused(e.errors());
    }

    @ExceptionHandler(NotFoundException.class)
    ProblemDetail notFound(NotFoundException e) {
        return ProblemDetail.forStatusAndDetail(HttpStatus.NOT_FOUND, String.valueOf(e.getMessage()));
    }

    @ExceptionHandler(ConflictException.class)
    ProblemDetail conflict(ConflictException e) {
        return ProblemDetail.forStatusAndDetail(HttpStatus.CONFLICT, String.valueOf(e.getMessage()));
    }

    @ExceptionHandler(EditConditionException.class)
    ProblemDetail editCondition(EditConditionException e) {
        return ProblemDetail.forStatusAndDetail(e.status(), String.valueOf(e.getMessage()));
    }

    @ExceptionHandler(MethodArgumentTypeMismatchException.class)
    ProblemDetail wrongType(MethodArgumentTypeMismatchException e) {
        String type =
                e.getRequiredType() == null ? "value" : e.getRequiredType().getSimpleName();
        return refused(List.of(new FieldError(
                "/" + e.getName(), e.getName(), String.valueOf(e.getValue()), "is not a " + plainName(type))));
    }

    @ExceptionHandler(Exception.class)
    ProblemDetail unexpected(Exception e, HttpServletRequest request) {
        log.error("{} {} failed", request.getMethod(), request.getRequestURI(), e);
        return ProblemDetail.forStatusAndDetail(
                HttpStatus.INTERNAL_SERVER_ERROR,
                "Something in the program went wrong; nothing was saved. The log has more.");
    }

    @Override
    protected @Nullable ResponseEntity<Object> handleMissingServletRequestParameter(
            MissingServletRequestParameterException e, HttpHeaders headers, HttpStatusCode status, WebRequest request) {
        FieldError error = new FieldError("/" + e.getParameterName(), e.getParameterName(), "", "is missing");
        return ResponseEntity.unprocessableContent().body(refused(List.of(error)));
    }

    @Override
    protected @Nullable ResponseEntity<Object> handleHttpMessageNotReadable(
            HttpMessageNotReadableException e, HttpHeaders headers, HttpStatusCode status, WebRequest request) {
        if (!(e.getCause() instanceof JacksonException cause)) {
            return ResponseEntity.badRequest()
                    .body(ProblemDetail.forStatusAndDetail(
                            HttpStatus.BAD_REQUEST, "The body is missing or cannot be read as JSON."));
        }
        if (cause instanceof StreamReadException || cause.getPath().isEmpty()) {
            String where = cause.getLocation() == null
                    ? ""
                    : " (line " + cause.getLocation().getLineNr() + ", column "
                            + cause.getLocation().getColumnNr() + ")";
            return ResponseEntity.badRequest()
                    .body(ProblemDetail.forStatusAndDetail(
                            HttpStatus.BAD_REQUEST, "The body is not the JSON expected here" + where + "."));
        }
        String pointer = cause.getPath().stream()
                .map(r -> r.getPropertyName() == null ? String.valueOf(r.getIndex()) : r.getPropertyName())
                .collect(Collectors.joining("/", "/", ""));
        String field = pointer.substring(pointer.lastIndexOf('/') + 1);
        return ResponseEntity.unprocessableContent()
                .body(refused(List.of(new FieldError(pointer, field, "", "has a value of the wrong kind"))));
    }

    private static ProblemDetail refused(List<FieldError> errors) {
        ProblemDetail problem = ProblemDetail.forStatusAndDetail(
                HttpStatus.UNPROCESSABLE_CONTENT,
                errors.size() == 1
                        ? errors.get(0).sentence()
                        : errors.size() + " values are not right; nothing was saved.");
        problem.setTitle("Not right yet");
        problem.setProperty(
                "errors",
                errors.stream()
                        .map(e -> Map.of(
                                "pointer", e.pointer(),
                                "field", e.field(),
                                "value", e.value(),
                                "message", e.sentence()))
                        .collect(Collectors.toList()));
        return problem;
    }

    private static String plainName(String type) {
        return switch (type) {
            case "int", "Integer", "long", "Long" -> "whole number";
            case "boolean", "Boolean" -> "yes or no (true or false)";
            case "LocalDate" -> "day; write for example 2026-12-04";
            default -> "valid " + type;
        };
    }
}
