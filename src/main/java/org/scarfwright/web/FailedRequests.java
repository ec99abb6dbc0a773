package org.scarfwright.web;

import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.http.HttpServletRequest;
import org.springframework.boot.webmvc.error.ErrorController;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.RequestMapping;

/** The last answer to a request that reached no handler or failed outside one: a problem detail for the API, else a page. */
@Controller
class FailedRequests implements ErrorController {
    @RequestMapping("/error")
    Object failed(HttpServletRequest request) {
        HttpStatus status = statusOf(request);
        String message = messageFor(status, request);
        if (String.valueOf(request.getAttribute(RequestDispatcher.ERROR_REQUEST_URI))
                .startsWith("/api")) {
            return ResponseEntity.status(status)
                    .contentType(MediaType.APPLICATION_PROBLEM_JSON)
                    .body(ProblemDetail.forStatusAndDetail(status, message));
        }
        return PageErrors.page(status, message);
    }

    private static HttpStatus statusOf(HttpServletRequest request) {
        HttpStatus status = request.getAttribute(RequestDispatcher.ERROR_STATUS_CODE) instanceof Integer code
                ? HttpStatus.resolve(code)
                : HttpStatus.NOT_FOUND; // somebody opened /error itself
        return status == null ? HttpStatus.INTERNAL_SERVER_ERROR : status;
    }

    private static String messageFor(HttpStatus status, HttpServletRequest request) {
        Object said = request.getAttribute(RequestDispatcher.ERROR_MESSAGE);
        return switch (status) {
            case NOT_FOUND -> "There is nothing at this address.";
            case FORBIDDEN ->
                said instanceof String text && !text.isBlank() && !text.equals("Forbidden")
                        ? text
                        : "The form was too old or came from elsewhere. Go back, reload the page and send it again.";
            case METHOD_NOT_ALLOWED -> "This address does not take that kind of request.";
            case CONTENT_TOO_LARGE -> "That is larger than this address takes at once: 32 MB, or 2 GB for a shop file.";
            case LENGTH_REQUIRED -> "A file in a form must say how long it is.";
            case UNSUPPORTED_MEDIA_TYPE -> "This address does not take that kind of content.";
            case BAD_REQUEST -> "The request cannot be read.";
            default ->
                status.is5xxServerError()
                        ? "Something in the program went wrong; nothing was saved. The log has more."
                        : status.getReasonPhrase() + ".";
        };
    }
}
