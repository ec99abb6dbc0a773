package org.scarfwright.web;

import org.springframework.core.annotation.Order;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.servlet.ModelAndView;

/** Errors of pages that no form can show beside its fields. */
@ControllerAdvice(annotations = Controller.class)
@Order(0)
class PageErrors {
    @ExceptionHandler(NotFoundException.class)
    ModelAndView notFound(NotFoundException e) {
        return page(HttpStatus.NOT_FOUND, String.valueOf(e.getMessage()));
    }

    @ExceptionHandler(ConflictException.class)
    ModelAndView conflict(ConflictException e) {
        return page(HttpStatus.CONFLICT, String.valueOf(e.getMessage()));
    }

    @ExceptionHandler(InvalidInputException.class)
    ModelAndView invalid(InvalidInputException e) {
        return page(HttpStatus.UNPROCESSABLE_CONTENT, String.valueOf(e.getMessage()));
    }

    static ModelAndView page(HttpStatus status, String message) {
        ModelAndView view = new ModelAndView("error");
        view.setStatus(status);
        view.addObject("status", status.value());
        view.addObject("message", message);
        return view;
    }
}
